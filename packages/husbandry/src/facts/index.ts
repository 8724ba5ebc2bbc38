import type { FactKind } from '@fryward/shared'
import { care } from './care.ts'
import { count } from './count.ts'
import { cure } from './cure.ts'
import { decision } from './decision.ts'
import type { FactEffects } from './effects.ts'
import type { Fact } from './fact.ts'
import { feeding } from './feeding.ts'
import { harvest } from './harvest.ts'
import { hatch } from './hatch.ts'
import { inoculation } from './inoculation.ts'
import { loss } from './loss.ts'
import { observation } from './observation.ts'
import { outcome } from './outcome.ts'
import { spawning } from './spawning.ts'
import { transfer } from './transfer.ts'
import { treatment } from './treatment.ts'
import { waterChange } from './water-change.ts'
import { waterReading } from './water-reading.ts'
import { waterTest } from './water-test.ts'

/** Every kind of fact with what it does to the state: one file a kind, and this list. */
const effects: { [K in FactKind]: FactEffects<K> } = {
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

/** The effects of a fact's kind. The table gives each kind its own, which the type of a union cannot say. */
export function effectsOf<F extends Fact>(fact: F): FactEffects<F['kind']> {
  return effects[fact.kind] as unknown as FactEffects<F['kind']>
}
