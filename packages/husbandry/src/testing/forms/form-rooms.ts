import type { CareKind, CureChange, FoodOrders } from '@fryward/shared'
import type { SnapshotCulture, SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { SnapshotBuilder } from '../snapshot-builder.ts'
import { steadyCulture } from '../steady-culture.ts'

/** The day of these small rooms, and what they are asked is asked on it. */
export const formDate = '2026-03-10'
const long = '2026-02-01T08:00:00.000Z'
const madeAt = `${formDate}T06:50:00.000Z`
/** Before the day's first round. */
export const morning = `${formDate}T06:40:00.000Z`

type Laid = { species?: string; care?: CareKind; spawnedAt?: string; eggs?: number; intent?: 'raise_all' | 'undecided' }

/** One clutch that was laid a week ago, of clownfish where nothing else is said, and an empty larval tank of 20 L. */
export function clutchRoom({ species = 'amphiprion-ocellaris', ...laid }: Laid = {}) {
  const room = new SnapshotBuilder()
  const pair = room.pair({ name: 'Pair A', species })
  const clutch = room.clutch(pair, { name: 'A1', spawnedAt: '2026-03-03T10:00:00.000Z', ...laid })
  room.tank({ name: 'Nursery 1' })
  return { room, pair, clutch }
}

/** A clutch of which a part hatched the night before last, and of which some eggs were left. */
export function halfHatched(laid: Laid = {}): SnapshotBuilder {
  const { room, clutch } = clutchRoom({ ...laid, spawnedAt: '2026-03-02T10:00:00.000Z' })
  const at = '2026-03-09T07:00:00.000Z'
  room.fact('hatch', clutch.id, at, { hatchedOn: '2026-03-08' })
  room.fact('observation', clutch.id, at, { signs: ['eggs_seen'] })
  return room
}

/** A pair that is looked at by itself, not as it is fed. */
export function pairRoom(species = 'amphiprion-ocellaris', { formedOn = null as string | null } = {}): SnapshotBuilder {
  const room = new SnapshotBuilder()
  room.pair({ species, formedOn })
  room.tank()
  return room
}

/** Larvae in 20 L at 30 and 27 C, of clownfish where nothing else is said. */
export function larvaeRoom(given: { hatchedOn: string; larvae?: number; species?: string }) {
  const room = new SnapshotBuilder()
  const tank = room.tank({ name: 'Nursery 1', volumeL: 20 })
  const batch = room.batch({ tankId: tank.id, ...given })
  return { room, tank, batch }
}

/** A culture of 18 L at 25 and 25 C since February, fed from a bottle of 65e9 cells per mL. */
export function cultureRoom(given: Partial<SnapshotCulture> = {}) {
  const room = new SnapshotBuilder()
  room.concentrate()
  const { kind = 'rotifer' } = given
  const culture = room.culture({ strain: kind === 'rotifer' ? 'L' : null, startedAt: long, ...given, kind })
  return { room, culture }
}

/** Two litres in which cysts are hatched, wetted yesterday morning. */
export function hatchRoom() {
  const { room, culture } = cultureRoom({ kind: 'artemia_hatch', volumeL: 2, temperatureC: 28 })
  room.fact('care', culture.id, '2026-03-09T07:10:00.000Z', { act: 'start_artemia', cystsG: 1, litres: 2 })
  return { room, culture }
}

/** Larvae of nine days and a jar of a litre of nauplii, counted at 400 a mL. */
export function jarRoom(): SnapshotBuilder {
  const { room } = larvaeRoom({ hatchedOn: '2026-03-01' })
  const hatcher = room.culture({ kind: 'artemia_hatch', strain: null, volumeL: 2, startedAt: long })
  const parts = [{ to: 'chilled_reserve' as const, volumeL: 2 }]
  room.fact('harvest', hatcher.id, `${formDate}T06:30:00.000Z`, { volumeL: 2, parts, keptMl: 1000 })
  room.fact('count', hatcher.id, morning, { of: 'culture', animals: [40, 40, 40], volumeMl: 0.1 })
  return room
}

/** 18 L of rotifers that were harvested a fifth a day, counted at 240 a mL this morning; what was chosen on the plan. */
export function steadyRoom(change?: CureChange) {
  const room = new SnapshotBuilder()
  const culture = steadyCulture(room, { date: formDate })
  room.count(culture, morning, [240, 240, 240])
  if (change) choose(room, change)
  return { room, culture }
}

export const choose = (room: SnapshotBuilder, change: CureChange) =>
  room.fact('cure', room.snapshot.room.id, `${formDate}T06:55:00.000Z`, { change, planMadeAt: madeAt })

/** Rotifers that stood at 300 a mL and are all but gone, and others at 200 that could take their place. */
export function crashedRoom(): SnapshotBuilder {
  const { room, culture } = cultureRoom()
  room.count(culture, '2026-03-08T06:30:00.000Z', [300, 300, 300])
  room.count(culture, morning, [5, 5, 5])
  room.count(room.culture({ isBackup: true, startedAt: long }), morning, [200, 200, 200])
  return room
}

/** A vessel that was cleaned out yesterday, with nothing in the room to begin it with. */
export function emptyRoom(): SnapshotBuilder {
  const { room, culture } = cultureRoom()
  room.fact('care', culture.id, '2026-03-09T07:10:00.000Z', { act: 'restart_culture', litres: 18 })
  return room
}

/** Two litres that were chilled two days ago, of which the plan gives a batch 100,000. */
export function chilledRoom(): SnapshotBuilder {
  const { room, culture } = cultureRoom()
  room.count(culture, '2026-03-08T06:30:00.000Z', [240, 240, 240])
  const parts = [{ to: 'chilled_reserve' as const, volumeL: 2 }]
  room.fact('harvest', culture.id, '2026-03-08T08:00:00.000Z', { volumeL: 2, parts })
  const { id: batchId } = room.batch({ hatchedOn: '2026-03-08', larvae: 300 })
  const orders: FoodOrders = {
    date: formDate,
    batches: [{ batchId, share: 1, from: [], chilled: 100_000 }],
    cultures: [],
  }
  room.snapshot.foodPlan = { madeAt, days: [orders] }
  return room
}

/** A pair's tank of 100 L at 35 and 26 C with a filter, whose water was changed five days ago, and tested as is said. */
export function tankRoom(read: { salinity?: number; totalAmmoniaNMgPerL?: number } = {}) {
  const room = new SnapshotBuilder()
  const about = { kind: 'broodstock', volumeL: 100, salinity: 35, temperatureC: 26, hasFilter: true } as const
  const tank = room.tank({ name: 'Pair tank', ...about })
  room.pair({ tankId: tank.id })
  room.fact('water_change', tank.id, '2026-03-05T12:30:00.000Z', { removedL: 10, addedL: 10 })
  if (Object.keys(read).length > 0) room.fact('water_test', tank.id, morning, { temperatureC: 26, pH: 8.2, ...read })
  return { room, tank }
}

/** A quarantine tank of 40 L at 33, empty or with fish since a day. */
export function quarantineRoom(arrivedAt?: string): { room: SnapshotBuilder; tank: SnapshotTank } {
  const room = new SnapshotBuilder()
  const tank = room.tank({ name: 'Q1', kind: 'quarantine', volumeL: 40, salinity: 33 })
  const came = { act: 'fish_arrived', number: 4, litres: 2, salinity: 35 } as const
  if (arrivedAt !== undefined) room.fact('care', tank.id, arrivedAt, came)
  return { room, tank }
}

/** A culture that was seen in trouble the evening before. */
export function seenRoom(given: Partial<SnapshotCulture>, sign: 'bad_smell' | 'swimming_slow'): SnapshotBuilder {
  const { room, culture } = cultureRoom(given)
  room.fact('observation', culture.id, '2026-03-09T18:00:00.000Z', { signs: [sign] })
  return room
}
