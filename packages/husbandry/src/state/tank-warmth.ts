import type { Because, Instant } from '@fryward/shared'
import { factLink, settingLink } from '../rule/why.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { readBy, waterReads } from './water-reads.ts'

/** Whether a forecast stands on a tank's measured temperatures or on its set point, as a link of "why". */
export function warmthLink(
  snapshot: RoomSnapshot,
  tank: SnapshotTank,
  { since, until }: { since: Instant; until: Instant },
): Because {
  const read = waterReads(snapshot, 'temperatureC', { subjectId: tank.id, until }).filter(({ at }) => at >= since)
  const last = read.at(-1)
  const label = `water of ${tank.name}`
  if (!last)
    return settingLink(tank.id, 'set temperature', {
      label: `${label}, set point`,
      quantity: { value: tank.temperatureC, unit: 'degC' },
      joins: 'and',
    })
  const by = last.fact.kind === 'water_reading' ? ` ${readBy(last)}` : ''
  return factLink(last.fact, {
    label: `${label}, last of ${read.length} measured${by}`,
    quantity: { value: last.value, unit: 'degC' },
    joins: 'and',
  })
}
