import { walkRound } from './keeper.ts'
import type { Larvae } from './larvae.ts'
import { type LiveRoom, openLiveRoom } from './live-room.ts'
import type { Nature } from './nature.ts'
import type { Service } from './service.ts'
import { sumOf, type Tally } from './tally.ts'
import { isFoul, isNitriteFoul, type Water } from './water.ts'

const dayMs = 86_400_000
const isoDate = (ms: number) => new Date(ms).toISOString().slice(0, 10)
const sparePerMl = 100
const starvedHours = 5
// Half of what a harvest begins at: they would take weeks to come back. assumption
const thinPerMl = 0.5
// Half of what production tanks hold: Oceanic Institute, WAS meeting abstract 156505.
const sparePerMlGrown = 1

export type LifeInput = {
  seed: number
  days: number
  rooms: number
  /** Of one culture, on average. */
  daysToCrash: number
  print: (line: string) => void
  tell: (line: string) => void
}

/** Rooms whose keepers do what the list says and nothing else, day after day, while the clock is moved on. */
export async function live(
  world: Service,
  { seed, days, rooms: many, daysToCrash, print, tell }: LifeInput,
): Promise<Tally> {
  const rooms: LiveRoom[] = []
  for (let index = 0; index < many; index += 1)
    rooms.push(await openLiveRoom(world, { name: `Room ${index + 1}`, seed: seed * 1000 + index, daysToCrash, tell }))
  const firstMs = Date.parse(`${world.clock.now().slice(0, 10)}T00:00:00.000Z`) + dayMs
  for (let day = 0; day < days; day += 1) {
    const date = isoDate(firstMs + day * dayMs)
    world.clock.set(`${date}T00:05:00.000Z`)
    await world.tick()
    for (const room of rooms) print(await liveADay(world, room, { date, day }))
  }
  return sumOf(rooms.map(({ tally }) => tally))
}

async function liveADay(world: Service, room: LiveRoom, { date, day }: { date: string; day: number }): Promise<string> {
  const before = { ...room.tally, refusals: [...room.tally.refusals] }
  room.shown.clear()
  for (const culture of room.nature.rotifers.values()) culture.harvestedPerMl = null
  for (const round of room.rounds) {
    world.clock.set(`${date}T${round.at}:00.000Z`)
    room.nature.until(Date.parse(world.clock.now()))
    await walkRound(world, room, { date, roundId: round.id })
    if (round.id === room.rounds.at(-2)?.id) lookForMissed(room)
  }
  const endMs = Date.parse(`${date}T23:00:00.000Z`)
  room.nature.until(endMs)
  closeDay(room, endMs)
  return lineOf(room, { date, day, before, atMs: endMs })
}

/** Larvae that came in the night and that nobody was sent to are lost by noon. */
function lookForMissed({ nature, tally }: LiveRoom): void {
  for (const eggs of nature.breeders.clutches) {
    // What floated in the parents' tank is eaten or drawn in; larvae that were moved as eggs live on their yolk for a day.
    const isAfloat = eggs.fish.floats !== undefined
    const lastsMs = isAfloat && eggs.clutchId !== null ? dayMs : 0
    const lost = eggs.nights.filter((night) => night.atMs + lastsMs <= nature.nowMs && !night.isTaken)
    for (const night of lost) night.isTaken = true
    if (lost.length > 0) nature.leaveLost(eggs, lost)
    if (lost.length === 0 || eggs.isLeft) continue
    if (isAfloat && eggs.clutchId === null) tally.eveningsPassed += 1
    else if (eggs.clutchId === null) tally.eggsUnseen += 1
    else tally.hatchesMissed += 1
  }
}

function closeDay(room: LiveRoom, atMs: number): void {
  const { nature, tally } = room
  tally.days += 1
  tally.spawned = nature.breeders.clutches.length
  tally.hatched = nature.breeders.clutches.filter((eggs) => eggs.nights.some((night) => night.atMs <= atMs)).length
  tally.artemiaShort = nature.shortFeeds.length
  tally.artemiaEmpty = nature.emptyHarvests.length
  tally.conesLost = nature.lostStarts.length
  tally.crashes = nature.crashes
  tally.sickDays += [...nature.rotifers.values()].filter(({ isSick }) => isSick).length
  tally.cultureDays += nature.rotifers.size
  tally.copepodDays += nature.copepods.size
  tally.thinCopepods += [...nature.copepods.values()].filter(({ grown }) => grown < thinPerMl).length
  for (const batch of nature.batches.values()) {
    tally.larvalDays += 1
    const spare = spareFor(nature, { batch, atMs })
    const isStarved = batch.hungryHours >= starvedHours && batch.number >= 1
    const wanted = batch.number * batch.eatenPerLarvaPerHour(atMs) * 6
    if (isStarved && spare >= wanted) tally.starvedDays += 1
    if (isStarved && spare < wanted) tally.hungryDays += 1
    batch.hungryToday = batch.hungryHours
    batch.hungryHours = 0
  }
  closeWaters(room)
}

/** What cultures hold beyond need of a prey that a batch can take. */
function spareFor({ rotifers, copepods }: Nature, { batch, atMs }: { batch: Larvae; atMs: number }): number {
  const nauplii = [...copepods.values()].reduce(
    (sum, { grown, nauplii, volumeL }) => sum + (grown < sparePerMlGrown ? 0 : nauplii * volumeL * 1000),
    0,
  )
  if (!batch.takesRotifers(atMs)) return nauplii
  return [...rotifers.values()].reduce(
    (sum, { perMl, volumeL, isSick }) => sum + (isSick ? 0 : Math.max(0, perMl - sparePerMl) * volumeL * 1000),
    0,
  )
}

function closeWaters({ name, nature, tally, names }: LiveRoom): void {
  for (const [id, { came, poisoned }] of [...nature.batches, ...nature.groups])
    if (poisoned > 0) tally.poisoned[`${name}: ${names.get(id)}`] = poisoned / came
  tally.changedL.push(nature.changedL)
  nature.changedL = 0
  const foul = (things: Iterable<{ water: Water }>, who: 'larvae' | 'fish') =>
    [...things].filter(({ water }) => isFoul(water.worstMgPerL, who)).length
  const groups = [...nature.groups.values()].filter(({ number }) => number >= 1)
  const homes = [...nature.homes.keys()].flatMap((id) => nature.waterOf(id) ?? [])
  tally.juvenileDays += groups.length
  tally.foulLarvae += foul(nature.batches.values(), 'larvae')
  tally.foulJuveniles += foul(groups, 'fish')
  tally.foulPairs += homes.filter(({ worstMgPerL }) => isFoul(worstMgPerL, 'fish')).length
  tally.foulCultures += [...nature.rotifers.values()].filter(({ isFoul }) => isFoul).length
  const lived = [...nature.batches.values(), ...groups].map(({ water }) => water).concat(homes)
  tally.foulByNitrite += lived.filter(({ nitriteMgPerL }) => isNitriteFoul(nitriteMgPerL)).length
  tally.mostNitriteMgPerL = Math.max(tally.mostNitriteMgPerL, ...lived.map(({ nitriteMgPerL }) => nitriteMgPerL))
  for (const water of nature.waters.values()) water.worstMgPerL = water.poisonMgPerL
}

type DayTold = { date: string; day: number; before: Tally; atMs: number }

function lineOf(room: LiveRoom, { date, day, before, atMs }: DayTold): string {
  const { nature, tally, names } = room
  const cultures = [...nature.rotifers].map(
    ([id, { perMl, isSick }]) => `${names.get(id)} ${Math.round(perMl)}${isSick ? ' dying' : ''}`,
  )
  const copepods = [...nature.copepods].map(
    ([id, { grown, nauplii }]) => `${names.get(id)} ${grown.toFixed(1)}+${nauplii.toFixed(1)}`,
  )
  const batches = [...nature.batches].map(([, batch]) => {
    const withCopepods = batch.isOfFloatingEggs ? `+${batch.copepodsPerMl.toFixed(2)}` : ''
    const prey = `${batch.rotifersPerMl.toFixed(1)}+${batch.artemiaPerMl.toFixed(2)}${withCopepods} per mL`
    return `${Math.round(batch.number)} larvae of day ${Math.floor(batch.ageDays(atMs))}, ${prey}, hungry ${batch.hungryToday} h, ammonia ${batch.water.ammoniaMgPerL.toFixed(2)}`
  })
  const happened = (
    ['eggsUnseen', 'hatchesMissed', 'artemiaShort', 'artemiaEmpty', 'conesLost', 'underFloor', 'linksByHand'] as const
  )
    .filter((name) => tally[name] > before[name])
    .map((name) => `${name} +${tally[name] - before[name]}`)
  const refused = tally.refusals.length > before.refusals.length ? ['refused'] : []
  const parts = [
    `${tally.tasks - before.tasks} tasks`,
    [...cultures, ...copepods].join(' '),
    ...batches,
    ...happened,
    ...refused,
  ]
  return `${String(day + 1).padStart(3)} ${date} ${room.name}: ${parts.join('; ')}`
}
