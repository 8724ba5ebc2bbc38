import type { Because, Instant } from '@fryward/shared'
import { factLink, settingLink } from '../engine/rule.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot.ts'
import type { TankWarmth } from '../thermal/index.ts'
import { factsUntil } from './day-facts.ts'

// Where the thermal forecasts take a temperature; a reading outside is not the water's.
const believableC = { from: 10, to: 40 }

/** A tank's measured temperatures over its set point, and a link that says which of the two was used. */
export function tankWarmth(
  snapshot: RoomSnapshot,
  tank: SnapshotTank,
  { since, until }: { since: Instant; until: Instant },
): { warmth: TankWarmth; because: Because } {
  const isBelievable = (value: number) => value >= believableC.from && value <= believableC.to
  const read = factsUntil(snapshot, 'water_test', { subjectId: tank.id, until }).filter(
    (fact) => fact.at >= since && fact.data.temperatureC !== undefined && isBelievable(fact.data.temperatureC),
  )
  const temperatures = read.flatMap((fact) =>
    fact.data.temperatureC === undefined ? [] : [{ at: fact.at, temperatureC: fact.data.temperatureC }],
  )
  const setPointC = Math.min(believableC.to, Math.max(believableC.from, tank.temperatureC))
  const last = read.at(-1)
  const label = `water of ${tank.name}`
  const because =
    last?.data.temperatureC === undefined
      ? settingLink(tank.id, 'set temperature', {
          label: `${label}, set point`,
          quantity: { value: tank.temperatureC, unit: 'degC' },
          joins: 'and',
        })
      : factLink(last, {
          label: `${label}, last of ${read.length} measured`,
          quantity: { value: last.data.temperatureC, unit: 'degC' },
          joins: 'and',
        })
  return { warmth: { temperatures, setPointC }, because }
}
