import type { Tank, Task } from '@fryward/shared'
import type { Person } from '../support/world.ts'
import { Chance } from './chance.ts'
import { clownfish, dragonet, others } from './fish.ts'
import { Nature } from './nature.ts'
import type { Service } from './service.ts'
import { emptyTally, type Tally } from './tally.ts'

export type LiveRoom = {
  name: string
  roomId: string
  owner: Person
  nature: Nature
  tally: Tally
  larvalTanks: number
  rounds: readonly { id: string; at: string }[]
  names: Map<string, string>
  /** Litres that a vessel holds. */
  volumes: Map<string, number>
  /** Tasks that the day's list has shown. */
  shown: Map<string, Task>
  /** What was written down up to here has happened. */
  seenRevision: number
  /** Hears of each task as it is signed off. */
  tell: (line: string) => void
}

const roundsOf = (times: Record<string, string>) =>
  Object.entries(times).map(([name, at]) => ({ id: name.toLowerCase(), name, at }))
/** When people come to a room, in turn. */
const habits = [
  roundsOf({ Morning: '07:00', Midday: '12:30', Evening: '18:30' }),
  roundsOf({ Morning: '07:00', Evening: '18:30' }),
  roundsOf({ Morning: '06:30', Noon: '11:30', Afternoon: '16:00', Night: '21:30' }),
]
/** From this turn on rooms breed fish with floating eggs, and copepods for their larvae, fed from the bottle or with live algae in turn. */
const openWaterFrom = 3200
const light = { onHour: 7, offHour: 19 }
// 16 h, as the service says of tanks for larvae that have no hours of their own.
const larvalHours = 16
/** When it is light over a tank. */
export const lightOver = ({ lightHours }: { lightHours: number | null }) => ({
  onHour: light.onHour,
  offHour: light.onHour + (lightHours ?? larvalHours),
})

/** Nature in a tank. Rock and old walls work in those that stand; those of larvae are scrubbed between two batches. */
export function fillTank({ nature, volumes }: Pick<LiveRoom, 'nature' | 'volumes'>, tank: Tank) {
  volumes.set(tank.id, tank.volumeL)
  return nature.addTank(tank.id, { ...tank, by: tank.hasFilter ? 'filter' : tank.kind === 'larval' ? 'none' : 'walls' })
}

const copepodsAtFirst = 1.2

const copepodsAgeDays = 21

/** Copepods that have been kept for weeks, and what they may eat. */
const openWaterFood = (chance: Chance, nowMs: number) => [
  ...['C1', 'C2'].map((name) => ({
    ...{ name, kind: 'copepod' as const, strain: null, startDensityPerMl: copepodsAtFirst },
    startedAt: new Date(nowMs - copepodsAgeDays * 86_400_000).toISOString(),
    ...{ volumeL: Math.round(chance.between(20, 40)), temperatureC: 26, salinity: 33 },
  })),
  ...['A1', 'A2'].map((name) => ({
    ...{ name, kind: 'microalgae' as const, strain: null, volumeL: 10, temperatureC: 24, salinity: 28 },
  })),
]

/** A room as small breeders have them, drawn from the seed: what it has the service is told, how it behaves it is not. */
export async function openLiveRoom(
  world: Service,
  { name, seed, daysToCrash, tell }: { name: string; seed: number; daysToCrash: number; tell: (line: string) => void },
): Promise<LiveRoom> {
  const chance = new Chance(seed)
  const nowMs = Date.parse(world.clock.now())
  const temperatureC = Math.round(chance.between(25, 28))
  const larvalTanks = Math.round(chance.between(2, 4))
  const growOuts = Math.round(chance.between(1, 4))
  const turn = Math.floor(seed / 1000) + (seed % 1000)
  const rounds = habits[turn % habits.length]!
  const other = others[turn % others.length]
  const isOpenWater = turn >= openWaterFrom
  const pairs = isOpenWater ? [clownfish, dragonet] : [clownfish, clownfish, ...(other ? [other] : [])]
  const { owner, room } = await world.open({
    name,
    timeZone: 'Etc/GMT',
    rounds,
    tanks: [
      ...Array.from({ length: larvalTanks }, (_, index) => ({
        ...{ name: `Larval tank ${index + 1}`, kind: 'larval' as const },
        ...{ volumeL: Math.round(chance.between(25, 50)), temperatureC, salinity: 30 },
        // Every other one is lit as tanks for larvae are, the rest as long as the room.
        ...(index % 2 === 0 ? {} : { lightHours: light.offHour - light.onHour }),
      })),
      ...pairs.map((_, index) => ({
        ...{ name: `Pair tank ${index + 1}`, kind: 'broodstock' as const, volumeL: 80, temperatureC, salinity: 33 },
      })),
      ...Array.from({ length: growOuts }, (_, index) => ({
        ...{ name: `Grow-out ${index + 1}`, kind: 'grow_out' as const, volumeL: 200, temperatureC, salinity: 33 },
        // Every other one is filtered.
        hasFilter: index % 2 === 1,
      })),
    ],
    cultures: [
      ...['R1', 'R2', 'R3'].map((culture) => ({
        ...{ name: culture, kind: 'rotifer' as const, strain: 'L' as const, isBackup: culture === 'R3' },
        ...{ volumeL: Math.round(chance.between(14, 22)), temperatureC: 25, salinity: 20, startDensityPerMl: 90 },
      })),
      ...['H1', 'H2'].map((cone) => ({
        ...{ name: cone, kind: 'artemia_hatch' as const, volumeL: 2, temperatureC: 27, salinity: 30 },
      })),
      ...(isOpenWater ? openWaterFood(chance, nowMs) : []),
    ],
  })
  const params = { roomId: room.id }
  const nature = new Nature(chance, { nowMs, temperatureC, light, daysToCrash })
  const names = new Map<string, string>()
  const volumes = new Map<string, number>()
  for (const culture of await world.ok(owner, 'listCultures', { params })) {
    names.set(culture.id, culture.name)
    volumes.set(culture.id, culture.volumeL)
    if (culture.kind === 'rotifer') nature.addRotifers(culture.id, { ...culture, perMl: 90 * chance.factor(0.15) })
    if (culture.kind === 'copepod') nature.addCopepods(culture.id, { ...culture, adultsPerMl: copepodsAtFirst / 2 })
    if (culture.kind === 'microalgae') nature.addAlgae(culture.id, culture)
    if (culture.kind === 'copepod' && turn % 2 === 1) {
      const body = { concentrateId: null, version: culture.version }
      await world.ok(owner, 'changeCulture', { params: { ...params, cultureId: culture.id }, body })
    }
    if (culture.kind === 'artemia_hatch') nature.addCone(culture.id, culture.temperatureC)
  }
  const tanks = await world.ok(owner, 'listTanks', { params })
  for (const tank of tanks) fillTank({ nature, volumes }, tank)
  for (const [index, fish] of pairs.entries()) {
    const tank = tanks.find(({ name }) => name === `Pair tank ${index + 1}`)!
    const body = { name: `${tank.name} pair`, species: fish.species, tankId: tank.id }
    nature.addPair((await world.ok(owner, 'createPair', { params, body })).id, { tankId: tank.id, fish })
  }
  return {
    name,
    roomId: room.id,
    owner,
    nature,
    tally: emptyTally(),
    larvalTanks,
    rounds,
    names,
    volumes,
    shown: new Map(),
    seenRevision: room.revision + pairs.length,
    tell,
  }
}
