import { type Random, seededRandom } from '@fryward/live-feed'
import type { ReviewRoom } from '../review/review-room.ts'
import { BroodRoom } from './brood-room.ts'

const some = (random: Random, most: number) => Math.floor(random.uniform() * (most + 1))
const chance = (random: Random, share: number) => random.uniform() < share

type Raising = { room: BroodRoom; random: Random; today: number }
type Vessel = { id: string }
type Living = { vessel: Vessel; of: 'larvae' | 'juveniles'; alive: number }

const CLUTCHES = 8
/** So few that heads are counted one by one, and numbers are what they say. */
const MOST_EGGS = 95
/** In no vessel do fewer stay: one that everybody left is another story. */
const FEWEST = 8

/** Clutches of two pairs, each raised in tanks of its own to its grow-out and out of the room, some of it still under way. */
export function raisedRoom(seed: number): ReviewRoom {
  const random = seededRandom(seed)
  const risks = [0.03, 0.03 + 0.05 * random.uniform()] as const
  const asked = { room: new BroodRoom(), random, today: 30 + some(random, 60) }
  const pairs = [1, 2].map((number) => asked.room.builder.pair({ name: `Pair ${number}` }))
  const tanks = [1, 2].map(() => asked.room.builder.tank().id)
  for (let index = 0; index < CLUTCHES; index += 1) {
    const day = 2 * index
    const eggs = 60 + some(random, MOST_EGGS - 60)
    const pair = pairs[index % 2]!
    const clutch = asked.room.builder.clutch(pair, { spawnedAt: asked.room.at(day), eggs })
    if (chance(random, 0.4)) loseEggs(asked, { clutch, day: day + 3 })
    const hatched = day + 8 + some(random, 1)
    const batch = asked.room.batch(hatched, [clutch], Math.min(eggs, 40 + some(random, MOST_EGGS - 40)))
    asked.room.house(hatched, batch, tanks[some(random, 1)])
    if (chance(random, 0.3)) asked.room.house(hatched + 3 + some(random, 9), batch)
    feed(asked, { batch, from: hatched })
    raise(asked, { batch, hatched, risk: risks[index % 2]! })
  }
  return asked.room.review(asked.today)
}

function loseEggs({ room, random }: Raising, { clutch, day }: { clutch: Vessel; day: number }): void {
  const data = { number: 1 + some(random, 5), of: 'eggs' as const, cause: 'fungus' }
  room.builder.fact('loss', clutch.id, room.at(day), data)
}

function feed({ room, random }: Raising, { batch, from }: { batch: Vessel; from: number }): void {
  const first = from + some(random, 2)
  room.eat(batch, 'rotifers', chance(random, 0.5) ? 'R1' : 'R2', { from: first, to: first + 9 })
  if (chance(random, 0.5))
    room.eat(batch, chance(random, 0.5) ? 'concentrate' : 'live_microalgae', null, { from, to: from + 9 })
  if (chance(random, 0.7)) room.eat(batch, 'artemia', null, { from: from + 3 + some(random, 6), to: from + 20 })
}

type Hatched = { batch: Vessel; hatched: number; risk: number }

function raise(asked: Raising, { batch, hatched, risk }: Hatched): void {
  const { room, random, today } = asked
  const larvae = room.builder.snapshot.facts.findLast(({ data }) => 'batchId' in data && data.batchId === batch.id)
  const alive = larvae?.kind === 'hatch' ? (larvae.data.larvae ?? 0) : 0
  const living: Living = { vessel: batch, of: 'larvae', alive }
  const settles = hatched + 12 + some(random, 6)
  for (let day = hatched + 1; day < Math.min(settles, today); day += 1) {
    live(asked, { living, day, risk })
    if (day === settles - 2 && chance(random, 0.7)) room.seeSettled(day, batch)
  }
  if (settles >= today) return
  living.vessel = moveOn(asked, { living, day: settles })
  living.of = 'juveniles'
  for (let day = settles + 1; day < today; day += 1) live(asked, { living, day, risk: 0.005 })
}

/** All that are left go to grow-out, and whoever is not among them was missing. */
function moveOn({ room }: Raising, { living, day }: { living: Living; day: number }): Vessel {
  const { vessel, alive } = living
  const group = room.group(day, room.builder.snapshot.batches.find(({ id }) => id === vessel.id)!)
  room.move(day, vessel, group, alive)
  room.end(day, vessel)
  return group
}

/** A day in a vessel: some die, seen or not; some are culled or placed; and now and then heads are counted. */
function live({ room, random }: Raising, { living, day, risk }: { living: Living; day: number; risk: number }): void {
  const { vessel, of } = living
  const spare = () => Math.max(0, living.alive - FEWEST)
  const dead = Math.min(spare(), Math.round(living.alive * risk * 2 * random.uniform()))
  living.alive -= dead
  if (dead > 0 && chance(random, 0.5))
    room.lose(day, vessel, dead, ['thin', 'Thin', 'eaten', undefined][some(random, 3)])
  if (chance(random, 0.2)) room.count(day, vessel, of, living.alive)
  if (!chance(random, 0.06)) return
  const leave = Math.min(spare(), 1 + some(random, 5))
  if (leave > 0) room.leave(day, vessel, of === 'larvae' || chance(random, 0.2) ? 'culled' : 'placed', leave)
  living.alive -= leave
}
