import type { BodyInputOf } from '@fryward/shared'
import { addDays, toPlainDate, typedNumber } from '@fryward/words'
import { serverNow } from '@/base/api/server-clock.ts'
import { readSpecies } from '@/parts/species/typed-species.ts'
import type { SwimmerDraft, WizardDraft } from './wizard-draft.ts'

type Setup = BodyInputOf<'createRoom'>
type Animals = Required<Pick<Setup, 'pairs' | 'batches' | 'groups'>>

const todayOf = (draft: WizardDraft) => toPlainDate(serverNow(), draft.timeZone)

/** Pairs, larvae and juveniles, each with its tank; or a sentence about the first that lacks something. */
export function readAnimals(draft: WizardDraft): Animals | string {
  const pairs = readPairs(draft)
  if (typeof pairs === 'string') return pairs
  const animals: Animals = { pairs, batches: [], groups: [] }
  for (const swimmer of draft.swimmers) {
    const read = readSwimmer(draft, swimmer)
    if (typeof read === 'string') return read
    const { day, number, fedFrom, ...own } = read
    const count = number === undefined ? {} : { number }
    if (swimmer.what === 'juveniles') animals.groups.push({ ...own, ...count, settledOn: day })
    else
      animals.batches.push({
        ...{ ...own, hatchedOn: day },
        ...(number === undefined ? {} : { larvae: number }),
        ...(fedFrom === undefined ? {} : { fedFrom }),
      })
  }
  return animals
}

function readPairs(draft: WizardDraft): Animals['pairs'] | string {
  const pairs: Animals['pairs'] = []
  for (const { name: typed, species: chosen, tankId, formedOn } of draft.pairs) {
    const name = typed.trim()
    if (name === '') return 'A name for each pair, so that it can be told apart.'
    const tank = draft.tanks.find(({ id }) => id === tankId)
    if (!tank) return `The tank that ${name} lives in.`
    const species = readSpecies(chosen, draft)
    if ('missing' in species) return `${name}: ${species.missing}.`
    if (formedOn > todayOf(draft)) return `${name}: together since a day that is not still to come.`
    pairs.push({ name, species: species.id, tank: tank.name.trim(), formedOn: formedOn || null })
  }
  return pairs
}

function readSwimmer(draft: WizardDraft, swimmer: SwimmerDraft) {
  const name = swimmer.name.trim()
  if (name === '') return 'A name for what swims already, so that it can be told apart.'
  const tank = draft.tanks.find(({ id }) => id === swimmer.tankId)
  if (!tank) return `The tank that ${name} swim in.`
  const species = readSpecies(swimmer.species, draft)
  if ('missing' in species) return `${name}: ${species.missing}.`
  const day = dayOf(draft, swimmer)
  if (day === undefined) return `${name}: their age in days, a whole number, or the day itself.`
  if (day > todayOf(draft)) return `${name}: a day that is not still to come.`
  const number = typedNumber(swimmer.number, null, draft)
  if (swimmer.number.trim() !== '' && !isCount(number))
    return `${name}: how many there are, a whole number above 0, or nothing where nobody knows.`
  const culture = draft.cultures.find(({ id }) => id === swimmer.cultureId)
  const fedFrom = swimmer.what === 'larvae' && culture ? culture.name.trim() : undefined
  return { name, species: species.id, tank: tank.name.trim(), day, number, fedFrom }
}

const isCount = (number: number | undefined) => number !== undefined && Number.isInteger(number) && number > 0

// A batch is a day old on the second morning after its hatch night: day 0 is the first.
const daysBefore = { larvae: 1, juveniles: 0 }
// A fish that old is an adult. common practice
const oldestDays = 1000

/** The hatch night of larvae, the day on which juveniles settled: as it was typed, or worked out from their age. */
function dayOf(draft: WizardDraft, { what, age, day }: SwimmerDraft): string | undefined {
  if (day !== '') return day
  const days = typedNumber(age, null, draft)
  if (days === undefined || !Number.isInteger(days) || days < 0 || days > oldestDays) return undefined
  return addDays(todayOf(draft), -days - daysBefore[what])
}
