import type { CareKind, Fact, Id, Quantity } from '@fryward/shared'
import { sayDate } from '../dates/say-date.ts'
import { sayFoodChange } from '../food/say-food.ts'
import { isCarried } from '../labels/brood.ts'
import {
  careActLabels,
  destinationLabels,
  eggStageLabels,
  foodLabels,
  outcomeLabels,
  sayCountTarget,
  saySign,
} from '../labels/facts.ts'
import { intentLabels } from '../labels/things.ts'
import { sayNumber, sayWhole } from '../numbers/say-number.ts'
import { sayHeads } from '../quantities/say-heads.ts'
import { sayQuantity } from '../quantities/say-quantity.ts'
import type { UnitVoice } from '../voice.ts'

const longAgo = '1970-01-01'

type Say = {
  voice: UnitVoice
  nameOf: (id: Id | undefined) => string | undefined
  /** Where the eggs of its clutch or batch were, as far as that is known. */
  care?: CareKind | undefined
}
type Of<K extends Fact['kind']> = Extract<Fact, { kind: K }>['data']

const quantity = (value: number | undefined, unit: Quantity['unit'], { voice }: Say) =>
  value === undefined ? undefined : sayQuantity({ value, unit }, voice)

/** What matters, and what it was worked out from. */
type Said = { main: string; detail?: string | undefined }

const join = (parts: (string | undefined)[]) => parts.filter((part) => part !== undefined && part !== '').join(', ')

function sayCount(data: Of<'count'>, say: Say): Said {
  const mean = data.animals.reduce((sum, one) => sum + one, 0) / data.animals.length
  const main =
    data.volumeMl === undefined
      ? sayNumber(mean, say.voice)
      : `${sayNumber((mean * data.dilution) / data.volumeMl, say.voice)} per mL`
  const target = data.of === 'culture' ? undefined : sayCountTarget(data.of, say.care).toLowerCase()
  const samples =
    data.volumeMl === undefined
      ? undefined
      : `${data.animals.map((one) => sayWhole(one, say.voice)).join(', ')} in ${sayNumber(data.volumeMl, say.voice)} mL${data.dilution === 1 ? '' : `, diluted ${sayNumber(data.dilution, say.voice)} times`}`
  const eggs =
    data.eggs === undefined || data.females === undefined
      ? undefined
      : `${sayNumber(data.eggs / data.females, say.voice)} eggs a female (${sayWhole(data.eggs, say.voice)} on ${sayWhole(data.females, say.voice)})`
  return {
    main: join([[main, target].filter(Boolean).join(' '), eggs, ...sayYoung(data, say)]),
    detail: samples && `counted ${samples}`,
  }
}

function sayHarvest(data: Of<'harvest'>, say: Say): string {
  const parts = data.parts.map((part) => {
    const to = say.nameOf(part.subjectId) ?? destinationLabels[part.to].toLowerCase()
    return `${quantity(part.volumeL, 'L', say)} to ${to}`
  })
  const kept = data.keptMl === undefined ? '' : `, in a jar of ${quantity(data.keptMl, 'mL', say)}`
  return parts.length === 1 ? `${join(parts)}${kept}` : `${quantity(data.volumeL, 'L', say)} taken: ${parts.join(', ')}`
}

const sayFeeding = (data: Of<'feeding'>, say: Say) =>
  join([
    join([quantity(data.amountMl, 'mL', say), quantity(data.amountG, 'g', say)]) || undefined,
    quantity(data.animals, 'animals', say),
    foodLabels[data.food].toLowerCase(),
    data.fromCultureId &&
      `from ${data.isChilled ? 'the chilled reserve of ' : ''}${say.nameOf(data.fromCultureId) ?? 'a culture'}`,
    data.note,
  ])

const sayWaterTest = (data: Partial<Of<'water_test'>>, say: Say) =>
  join([
    quantity(data.temperatureC, 'degC', say),
    data.salinity === undefined ? undefined : `salinity ${sayNumber(data.salinity, say.voice)}`,
    data.pH === undefined ? undefined : `pH ${sayNumber(data.pH, say.voice)}`,
    data.totalAmmoniaNMgPerL === undefined
      ? undefined
      : `total ammonia ${sayNumber(data.totalAmmoniaNMgPerL, say.voice)} mg/L N`,
    data.nitriteNMgPerL === undefined ? undefined : `nitrite ${sayNumber(data.nitriteNMgPerL, say.voice)} mg/L N`,
    data.nitrateNMgPerL === undefined ? undefined : `nitrate ${sayNumber(data.nitrateNMgPerL, say.voice)} mg/L N`,
    data.oxygenMgPerL === undefined ? undefined : `oxygen ${sayNumber(data.oxygenMgPerL, say.voice)} mg/L`,
  ])

const sayWaterChange = (data: Of<'water_change'>, say: Say) =>
  join([
    data.removedL > 0 ? `${quantity(data.removedL, 'L', say)} out` : undefined,
    data.addedL > 0 ? `${quantity(data.addedL, 'L', say)} in` : undefined,
    data.salinity === undefined ? undefined : `salinity ${sayNumber(data.salinity, say.voice)}`,
    quantity(data.temperatureC, 'degC', say),
  ])

/** What was seen of young fish beside their number. */
const sayYoung = (data: { lengthMm?: number | undefined; deformed?: number | undefined }, say: Say) => [
  quantity(data.lengthMm, 'mm', say),
  data.deformed === undefined ? undefined : `${sayWhole(data.deformed, say.voice)} deformed`,
]

const sayBeyond = ({ beyondBook }: { beyondBook?: string | undefined }) =>
  beyondBook === undefined ? undefined : `more than the book said: ${beyondBook}`

function sayEaten({ eatsDryFood, eatsFrozenFood }: Of<'outcome'>): string[] {
  const eaten = [...(eatsDryFood ? ['dry'] : []), ...(eatsFrozenFood ? ['frozen'] : [])]
  return [
    ...(eaten.length > 0 ? [`eat ${eaten.join(' and ')} food`] : []),
    ...(eatsDryFood === false ? ['do not eat dry food yet'] : []),
    ...(eatsFrozenFood === false ? ['do not eat frozen food yet'] : []),
  ]
}

function sayPlacing(data: Of<'outcome'>, { voice }: Say) {
  const { lengthMm, wasUnfedADay, toWhom, price } = data
  return [
    toWhom && `to ${toWhom}`,
    price && `for ${price}`,
    lengthMm === undefined ? undefined : `${sayNumber(lengthMm, voice)} mm long`,
    ...sayEaten(data),
    wasUnfedADay === undefined ? undefined : wasUnfedADay ? 'unfed for a day' : 'fed on the day before',
  ]
}

/** A brood is counted in heads: nobody sees how far it is. */
function sayLaid({ eggs }: Of<'spawning'>, say: Say): string {
  if (!isCarried(say.care)) return quantity(eggs, 'eggs', say) ?? 'eggs not counted'
  return eggs === undefined ? 'not counted' : sayWhole(eggs, say.voice)
}

/** One fact as a short sentence, numbers first, in the room's units, with its small print apart. */
export const sayFact = (fact: Fact, say: Say): Said =>
  fact.kind === 'count' ? sayCount(fact.data, say) : { main: sayOther(fact, say) }

function sayOther(fact: Exclude<Fact, { kind: 'count' }>, say: Say): string {
  switch (fact.kind) {
    case 'harvest':
      return sayHarvest(fact.data, say)
    case 'feeding':
      return sayFeeding(fact.data, say)
    case 'water_change':
      return sayWaterChange(fact.data, say)
    case 'water_test':
      return sayWaterTest(fact.data, say)
    case 'water_reading': {
      const { gaugeKey, readings, temperatureC, salinity, pH, oxygenMgPerL } = fact.data
      const said = sayWaterTest({ temperatureC, salinity, pH, oxygenMgPerL }, say)
      return `${said}, mean of ${sayWhole(readings, say.voice)} readings of ${gaugeKey}`
    }
    case 'inoculation':
      return join([
        quantity(fact.data.densityPerMl, 'per_mL', say),
        quantity(fact.data.animals, 'animals', say),
        fact.data.fromCultureId && `from ${say.nameOf(fact.data.fromCultureId) ?? 'a culture'}`,
      ])
    case 'loss':
      return join([
        sayHeads(fact.data.number, { of: fact.data.of, care: say.care }, say.voice),
        ...sayYoung(fact.data, say),
        fact.data.cause,
        sayBeyond(fact.data),
      ])
    case 'transfer':
      return join([
        `${sayWhole(fact.data.number, say.voice)} to ${say.nameOf(fact.data.toSubjectId) ?? 'another tank'}`,
        ...sayYoung(fact.data, say),
        fact.data.note,
        sayBeyond(fact.data),
      ])
    case 'observation':
      return join([
        ...fact.data.signs
          // The colour says that there are eggs.
          .filter((sign) => sign !== 'eggs_seen' || fact.data.eggStage === undefined)
          .map((sign) => saySign(sign, say.care).toLowerCase()),
        fact.data.eggStage && `eggs ${eggStageLabels[fact.data.eggStage].toLowerCase()}`,
        ...sayYoung(fact.data, say),
        fact.data.note,
      ])
    case 'care':
      return join([
        careActLabels[fact.data.act],
        fact.data.number === undefined ? undefined : `${sayWhole(fact.data.number, say.voice)} fish`,
        quantity(fact.data.litres, 'L', say),
        fact.data.saltG === undefined ? undefined : `${quantity(fact.data.saltG, 'g', say)} salt`,
        fact.data.salinity === undefined ? undefined : `salinity ${sayNumber(fact.data.salinity, say.voice)}`,
        fact.data.cystsG === undefined ? undefined : `${quantity(fact.data.cystsG, 'g', say)} cysts`,
        fact.data.forDate &&
          `${fact.data.act === 'order_rotifers' ? 'to come on' : 'for the feeds of'} ${sayDate(fact.data.forDate, say.voice)}`,
        fact.data.naupliiPerGram === undefined
          ? undefined
          : `${sayWhole(fact.data.naupliiPerGram, say.voice)} nauplii a gram`,
        fact.data.strength === undefined ? undefined : `bleach of ${quantity(fact.data.strength, 'share', say)}`,
        fact.data.note,
      ])
    case 'spawning':
      return sayLaid(fact.data, say)
    case 'treatment':
      return join([fact.data.product, fact.data.dose, `prescribed by ${fact.data.prescribedBy}`, fact.data.note])
    case 'decision':
      return intentLabels[fact.data.intent]
    case 'cure':
      // Read long after it was chosen: its days are said as dates.
      return sayFoodChange(fact.data.change, {
        nameOf: (id) => say.nameOf(id) ?? 'it',
        today: longAgo,
        voice: say.voice,
      })
    case 'outcome':
      return join([
        `${sayWhole(fact.data.number, say.voice)} ${outcomeLabels[fact.data.outcome]}`,
        ...sayPlacing(fact.data, say),
        fact.data.note,
        sayBeyond(fact.data),
      ])
    case 'hatch':
      return join([
        fact.data.larvae === undefined
          ? undefined
          : sayHeads(fact.data.larvae, { of: 'larvae', care: say.care }, say.voice),
        fact.data.share === undefined ? undefined : `${sayNumber(fact.data.share * 100, say.voice)}% of the clutch`,
        `night of ${sayDate(fact.data.hatchedOn, say.voice)}`,
      ])
  }
}
