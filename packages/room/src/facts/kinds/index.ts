import type { FactDraft } from '@fryward/husbandry'
import { type FactKind, factKinds } from '@fryward/shared'
import { care } from './care.ts'
import { count } from './count.ts'
import { cure } from './cure.ts'
import { decision } from './decision.ts'
import { feeding } from './feeding.ts'
import { harvest } from './harvest.ts'
import { hatch } from './hatch.ts'
import { inoculation } from './inoculation.ts'
import type { KindRules } from './kind-rules.ts'
import { loss } from './loss.ts'
import { observation } from './observation.ts'
import { outcome } from './outcome.ts'
import { spawning } from './spawning.ts'
import { transfer } from './transfer.ts'
import { treatment } from './treatment.ts'
import { waterChange } from './water-change.ts'
import { waterReading } from './water-reading.ts'
import { waterTest } from './water-test.ts'

const rules: { [K in FactKind]: KindRules<K> } = {
  count,
  harvest,
  feeding,
  inoculation,
  water_change: waterChange,
  water_test: waterTest,
  loss,
  transfer,
  observation,
  care,
  spawning,
  hatch,
  treatment,
  outcome,
  decision,
  water_reading: waterReading,
  cure,
}

/** What the room asks of a kind of fact; a kind that has no file here does not compile. */
export const rulesOf = <K extends FactKind>(kind: K): KindRules<K> => rules[kind]

/** The kinds that the books of animals are worked out from. */
export const bookKinds = factKinds.filter((kind) => rules[kind].book !== undefined)

/** Kinds that are in the book of a second thing, with the field that names it. */
export const arrivals = factKinds.flatMap((kind) => {
  const field = rules[kind].book?.arrivesAt
  return field === undefined ? [] : [{ kind, field }]
})

type Departure = Extract<FactDraft, { data: { beyondBook?: string | undefined } }>

/** Animals leave their clutch, batch or group with it; why there were more than the book held may stand in it. */
export const isDeparture = (fact: FactDraft): fact is Departure => rules[fact.kind].book?.departs === true
