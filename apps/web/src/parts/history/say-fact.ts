import type { Fact, Id, Quantity, UnitSystem } from '@fryward/shared'
import { toQuantityText } from '@/base/quantities/Amount.tsx'
import { formatNumber } from '@/base/quantities/format-number.ts'
import {
  careActLabels,
  countTargetLabels,
  destinationLabels,
  eggStageLabels,
  foodLabels,
  intentLabels,
  outcomeLabels,
  signLabels,
} from '@/base/words/labels.ts'

type Say = { system: UnitSystem; nameOf: (id: Id | undefined) => string | undefined }
type Of<K extends Fact['kind']> = Extract<Fact, { kind: K }>['data']

const quantity = (value: number | undefined, unit: Quantity['unit'], { system }: Say) =>
  value === undefined ? undefined : toQuantityText({ value, unit }, system)

/** What matters, and what it was worked out from. */
type Said = { main: string; detail?: string | undefined }

const join = (parts: (string | undefined)[]) => parts.filter((part) => part !== undefined && part !== '').join(', ')

function sayCount(data: Of<'count'>): Said {
  const mean = data.animals.reduce((sum, one) => sum + one, 0) / data.animals.length
  const main =
    data.volumeMl === undefined ? formatNumber(mean) : `${formatNumber((mean * data.dilution) / data.volumeMl)} per mL`
  const target = data.of === 'culture' ? undefined : countTargetLabels[data.of].toLowerCase()
  const samples =
    data.volumeMl === undefined
      ? undefined
      : `${data.animals.join(', ')} in ${formatNumber(data.volumeMl)} mL${data.dilution === 1 ? '' : `, diluted ${formatNumber(data.dilution)} times`}`
  const eggs =
    data.eggs === undefined || data.females === undefined
      ? undefined
      : `${formatNumber(data.eggs / data.females)} eggs a female (${data.eggs} on ${data.females})`
  return {
    main: join([[main, target].filter(Boolean).join(' '), eggs]),
    detail: samples && `counted ${samples}`,
  }
}

function sayHarvest(data: Of<'harvest'>, say: Say): string {
  const parts = data.parts.map((part) => {
    const to = say.nameOf(part.subjectId) ?? destinationLabels[part.to].toLowerCase()
    return `${quantity(part.volumeL, 'L', say)} to ${to}`
  })
  return parts.length === 1 ? join(parts) : `${quantity(data.volumeL, 'L', say)} taken: ${parts.join(', ')}`
}

const sayFeeding = (data: Of<'feeding'>, say: Say) =>
  join([
    join([quantity(data.amountMl, 'mL', say), quantity(data.amountG, 'g', say)]) || undefined,
    data.animals === undefined ? undefined : `${formatNumber(data.animals)} animals`,
    foodLabels[data.food].toLowerCase(),
    data.fromCultureId && `from ${say.nameOf(data.fromCultureId) ?? 'a culture'}`,
    data.note,
  ])

const sayWaterTest = (data: Of<'water_test'>, say: Say) =>
  join([
    quantity(data.temperatureC, 'degC', say),
    data.salinity === undefined ? undefined : `salinity ${formatNumber(data.salinity)}`,
    data.pH === undefined ? undefined : `pH ${formatNumber(data.pH)}`,
    data.totalAmmoniaNMgPerL === undefined
      ? undefined
      : `total ammonia ${formatNumber(data.totalAmmoniaNMgPerL)} mg/L N`,
    data.nitriteNMgPerL === undefined ? undefined : `nitrite ${formatNumber(data.nitriteNMgPerL)} mg/L N`,
    data.nitrateNMgPerL === undefined ? undefined : `nitrate ${formatNumber(data.nitrateNMgPerL)} mg/L N`,
    data.oxygenMgPerL === undefined ? undefined : `oxygen ${formatNumber(data.oxygenMgPerL)} mg/L`,
  ])

const sayWaterChange = (data: Of<'water_change'>, say: Say) =>
  join([
    data.removedL > 0 ? `${quantity(data.removedL, 'L', say)} out` : undefined,
    data.addedL > 0 ? `${quantity(data.addedL, 'L', say)} in` : undefined,
    data.salinity === undefined ? undefined : `salinity ${formatNumber(data.salinity)}`,
    quantity(data.temperatureC, 'degC', say),
  ])

const sayBeyond = ({ beyondBook }: { beyondBook?: string | undefined }) =>
  beyondBook === undefined ? undefined : `more than the book said: ${beyondBook}`

/** One fact as a short sentence, numbers first, in the room's units, with its small print apart. */
export const sayFact = (fact: Fact, say: Say): Said =>
  fact.kind === 'count' ? sayCount(fact.data) : { main: sayOther(fact, say) }

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
    case 'inoculation':
      return join([
        quantity(fact.data.densityPerMl, 'per_mL', say),
        fact.data.animals === undefined ? undefined : `${formatNumber(fact.data.animals)} animals`,
        fact.data.fromCultureId && `from ${say.nameOf(fact.data.fromCultureId) ?? 'a culture'}`,
      ])
    case 'loss':
      return join([`${fact.data.number} ${fact.data.of}`, fact.data.cause, sayBeyond(fact.data)])
    case 'transfer':
      return join([
        `${fact.data.number} to ${say.nameOf(fact.data.toSubjectId) ?? 'another tank'}`,
        fact.data.note,
        sayBeyond(fact.data),
      ])
    case 'observation':
      return join([
        ...fact.data.signs
          // The colour says that there are eggs.
          .filter((sign) => sign !== 'eggs_seen' || fact.data.eggStage === undefined)
          .map((sign) => signLabels[sign].toLowerCase()),
        fact.data.eggStage && `eggs ${eggStageLabels[fact.data.eggStage].toLowerCase()}`,
        fact.data.note,
      ])
    case 'care':
      return join([
        careActLabels[fact.data.act],
        quantity(fact.data.litres, 'L', say),
        fact.data.saltG === undefined ? undefined : `${quantity(fact.data.saltG, 'g', say)} salt`,
        fact.data.note,
      ])
    case 'spawning':
      return fact.data.eggs === undefined ? 'eggs not counted' : `${formatNumber(fact.data.eggs)} eggs`
    case 'treatment':
      return join([fact.data.product, fact.data.dose, `prescribed by ${fact.data.prescribedBy}`, fact.data.note])
    case 'decision':
      return intentLabels[fact.data.intent]
    case 'outcome':
      return join([`${fact.data.number} ${outcomeLabels[fact.data.outcome]}`, fact.data.note, sayBeyond(fact.data)])
    case 'hatch':
      return join([
        fact.data.larvae === undefined ? undefined : `${formatNumber(fact.data.larvae)} larvae`,
        fact.data.share === undefined ? undefined : `${formatNumber(fact.data.share * 100)}% of the clutch`,
        `night of ${fact.data.hatchedOn}`,
      ])
  }
}
