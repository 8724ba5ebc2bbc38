import type { Because, Instant } from '@fryward/shared'
import { factLink, settingLink } from '../rule/why.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { factsUntil } from './day-facts.ts'

/** Whether a forecast stands on a tank's measured temperatures or on its set point, as a link of "why". */
export function warmthLink(
  snapshot: RoomSnapshot,
  tank: SnapshotTank,
  { since, until }: { since: Instant; until: Instant },
): Because {
  const read = factsUntil(snapshot, 'water_test', { subjectId: tank.id, until }).filter(
    (fact) => fact.at >= since && fact.data.temperatureC !== undefined,
  )
  const last = read.at(-1)
  const label = `water of ${tank.name}`
  if (last?.data.temperatureC === undefined)
    return settingLink(tank.id, 'set temperature', {
      label: `${label}, set point`,
      quantity: { value: tank.temperatureC, unit: 'degC' },
      joins: 'and',
    })
  return factLink(last, {
    label: `${label}, last of ${read.length} measured`,
    quantity: { value: last.data.temperatureC, unit: 'degC' },
    joins: 'and',
  })
}
