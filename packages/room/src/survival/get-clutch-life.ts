import {
  addDays,
  ageOn,
  type BroodReview,
  eggLosses,
  expectedStages,
  litRoom,
  localDate,
  numbersByDay,
  reviewOfClutch,
  type TankTemperatures,
  tanksThroughLife,
} from '@fryward/husbandry'
import type { ClutchLife, Fact, FactKind, Id, PlainDate } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound } from '../errors.ts'
import { toFact } from '../facts/fact-view.ts'
import { factIncludes } from '../facts/get-fact.ts'
import { type Read, readInRoom } from '../frame/read-in-room.ts'
import { userNames } from '../people/user-names.ts'
import { type ReadReview, readReviewRoom } from './read-review-room.ts'
import { toRow } from './survival-rows.ts'

/** One clutch from its eggs to its placed young: numbers by day, losses, food, warmth and events on one line of time. */
export async function getClutchLife({
  ctx,
  roomId,
  clutchId,
}: {
  ctx: Context
  roomId: Id
  clutchId: Id
}): Promise<ClutchLife> {
  return readInRoom({ ctx, roomId }, async (read) => {
    const past = await readReviewRoom(read)
    const review = reviewOfClutch(past.room, clutchId)
    if (!review) throw notFound('clutch')
    const numbers = numbersByDay(past.room, review)
    const temperatures = await readTemperatures(read, { past, review, lastOn: numbers.at(-1)?.on ?? past.room.today })
    return {
      row: toRow(past, review),
      today: past.room.today,
      expected: expectedStages(past.room, {
        ...{ review, ofLarvae: warmthOf(temperatures, review.tankIds[0]) },
        ofEggs: {
          ...warmthOf(temperatures, review.eggTankId),
          lightsOffAt: await lightsOffOver(read, review.eggTankId),
        },
      }),
      numbers,
      departures: departuresOf(past, review),
      meals: mealsOf(past, review),
      temperatures: temperatures.readings,
      setPoints: temperatures.tanks.map(({ id, temperatureC }) => ({ tank: past.named(id), temperatureC })),
      events: await readEvents(read, review),
      vessels: review.brood.vessels.map(({ id }) => past.named(id)),
    }
  })
}

/** Of kinds that say what happened; feedings are summed up, and water tests drawn. */
const eventKinds: FactKind[] = [
  ...(['spawning', 'hatch', 'count', 'loss', 'transfer', 'observation', 'care', 'treatment', 'outcome'] as const),
  'decision',
]
/** Counts of the prey in the water are many, and stand on the page of the batch. */
const headsCounted: readonly string[] = ['eggs', 'larvae', 'juveniles']
const isEvent = (fact: Fact): boolean => fact.kind !== 'count' || headsCounted.includes(fact.data.of)

type Asked = Pick<Read, 'tx' | 'roomId' | 'ctx'>

async function readEvents({ tx, roomId }: Asked, { brood }: BroodReview): Promise<Fact[]> {
  const ids = [...brood.clutches.map(({ id }) => id), ...brood.vessels.map(({ id }) => id)]
  const rows = await tx.fact.findMany({
    where: { roomId, subjectId: { in: ids }, kind: { in: eventKinds }, struckAt: null },
    include: factIncludes,
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  })
  const names = await userNames(
    tx,
    rows.flatMap(({ recordedBy }) => (recordedBy === null ? [] : [recordedBy])),
  )
  return rows.map((row) => toFact(row, names)).filter(isEvent)
}

type Temperatures = {
  tanks: { id: Id; temperatureC: number }[]
  readings: ClutchLife['temperatures']
}

/** Where the eggs were and where the larvae are, with what was measured there until `lastOn`. */
async function readTemperatures(
  { tx, roomId, ctx }: Asked,
  { past, review, lastOn }: { past: ReadReview; review: BroodReview; lastOn: PlainDate },
): Promise<Temperatures> {
  const { brood, eggTankId } = review
  const groupIds = new Set(brood.vessels.map(({ id }) => id))
  const grownIn = past.room.groups.filter(({ id }) => groupIds.has(id)).map(({ tankId }) => tankId)
  const lived = tanksThroughLife(past.room, review)
  const ids = [...new Set([...(eggTankId === null ? [] : [eggTankId]), ...lived, ...grownIn])]
  const tanks = await tx.tank.findMany({ where: { roomId, id: { in: ids } }, select: { id: true, temperatureC: true } })
  // By when a date is over in every zone.
  const over = new Date(`${addDays(lastOn, 2)}T00:00:00.000Z`).toISOString()
  const rows = await tx.fact.findMany({
    where: {
      roomId,
      subjectId: { in: ids },
      kind: { in: ['water_test', 'water_reading'] },
      struckAt: null,
      at: { gte: brood.clutches[0]?.spawnedAt ?? ctx.now, lt: over },
    },
    include: factIncludes,
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  })
  const readings = rows.flatMap((row) => {
    const fact = toFact(row, new Map())
    const isMeasured = fact.kind === 'water_test' || fact.kind === 'water_reading'
    if (!isMeasured || fact.data.temperatureC === undefined) return []
    const isOver = localDate({ timeZone: past.room.timeZone, at: fact.at }) > lastOn
    return isOver ? [] : [{ at: fact.at, temperatureC: fact.data.temperatureC, tankId: fact.subjectId }]
  })
  return { tanks: ids.flatMap((id) => tanks.find((tank) => tank.id === id) ?? []), readings }
}

const warmthOf = ({ tanks, readings }: Temperatures, tankId: Id | null | undefined): TankTemperatures => ({
  readings: readings.filter((reading) => reading.tankId === tankId),
  setPointC: tanks.find(({ id }) => id === tankId)?.temperatureC ?? null,
})

/** When it gets dark over a tank, by its own hours of light where it has some. */
async function lightsOffOver({ tx, roomId, state }: Read, tankId: Id | null): Promise<string> {
  const { snapshot } = await state()
  const tank = tankId && (await tx.tank.findUnique({ where: { roomId_id: { roomId, id: tankId } } }))
  return litRoom(snapshot, tank || undefined).lightsOffAt
}

function departuresOf({ room }: ReadReview, { brood, book }: BroodReview): ClutchLife['departures'] {
  const eggs = eggLosses({ room, brood }).map((loss) => ({ ...loss, ageDays: null, kind: 'loss' as const }))
  return [
    ...eggs,
    ...book.departures.map(({ on, kind, number, cause }) => ({
      ...{ on, kind, number, cause },
      ageDays: book.bornOn === null ? null : ageOn(book.bornOn, on),
    })),
  ]
}

function mealsOf({ room, named }: ReadReview, { brood }: BroodReview): ClutchLife['meals'] {
  const ids = new Set(brood.vessels.map(({ id }) => id))
  const dateOf = (at: string) => localDate({ timeZone: room.timeZone, at })
  return room.meals
    .filter(({ batchId }) => ids.has(batchId))
    .map(({ food, cultureId, firstAt, lastAt, times }) => ({
      food,
      culture: cultureId === null ? null : named(cultureId),
      firstOn: dateOf(firstAt),
      lastOn: dateOf(lastAt),
      times,
    }))
}
