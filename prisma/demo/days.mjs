// Lives through the demo room's days: lists are opened by the clock, rounds are walked by whoever is on duty, not always
// in time, and things happen. Everything goes through the use cases of @fryward/room.
import { localDate } from '@fryward/husbandry'
import * as room from '@fryward/room'
import { toDateColumn } from '@fryward/store'
import { answersFor, confirmedFields } from './answers.mjs'
import { happenings } from './happenings.mjs'
import { storyOf } from './story.mjs'
import { Waters } from './waters.mjs'

const dayMs = 86_400_000
const minuteMs = 60_000
const iso = (ms) => new Date(ms).toISOString()

export async function liveThrough({ database, roomId, people, startMs, nowMs, random }) {
  const { timeZone, rounds } = await database.prisma.room.findUniqueOrThrow({ where: { id: roomId } })
  const names = new Map()
  const nameOf = (id) => names.get(id)
  const daysAgo = (atMs) => daysBetween(localDate({ timeZone, at: iso(atMs) }), localDate({ timeZone, at: iso(nowMs) }))
  const waters = new Waters(random)
  const world = {
    database,
    roomId,
    people,
    random,
    waters,
    timeZone,
    nameOf,
    daysAgo,
    nowMs,
    context: (person, atMs) => contextOf(database, person, atMs),
  }
  const events = happenings(world)
  await refreshNames(world, names)
  const first = [...names].find(([, name]) => name === 'R1')[0]
  waters.addCulture(first, { volumeL: 18, densityPerMl: 70, growthPerDay: 0.55, capacityPerMl: 520, atMs: startMs })

  for (const moment of momentsOf({ startMs, nowMs, timeZone, rounds })) {
    await room.openDays({
      ctx: { database, actor: { kind: 'system', job: 'scheduler' }, now: iso(moment.atMs) },
      roomId,
    })
    for (const event of events.filter(
      (each) => !each.isDone && each.daysAgo >= daysAgo(moment.atMs) && (each.roundId ?? 'morning') === moment.round.id,
    )) {
      event.isDone = true
      await event.run(moment.atMs - 20 * minuteMs)
    }
    await refreshNames(world, names)
    await walk({ ...world, moment, story: storyOf({ daysAgo, nameOf, waters, random }) })
    await meetNewBatches(world, moment.atMs)
    await closeMovedBatches(world, moment.atMs)
    if (moment.isLastOfDay) process.stderr.write('.')
  }
  process.stderr.write('\n')
}

function contextOf(database, person, atMs) {
  return { database, actor: { kind: 'person', userId: person.userId, name: person.name }, now: iso(atMs) }
}

/** Every round from the room's second day on that has begun by now, with the time at which somebody walks it. */
function momentsOf({ startMs, nowMs, timeZone, rounds }) {
  const moments = []
  for (let ms = startMs; ms <= nowMs + dayMs; ms += dayMs) {
    const date = localDate({ timeZone, at: iso(ms) })
    for (const [index, round] of rounds.entries()) {
      const startsMs = localInstant({ date, time: round.at, timeZone })
      if (startsMs > startMs && startsMs + 15 * minuteMs <= nowMs)
        moments.push({
          date,
          round,
          startsMs,
          atMs: startsMs,
          isLastOfDay: index === rounds.length - 1,
          isToday: date === localDate({ timeZone, at: iso(nowMs) }),
        })
    }
  }
  return moments
}

function localInstant({ date, time, timeZone }) {
  const guess = Date.parse(`${date}T${time}:00Z`)
  const shown = new Date(guess).toLocaleString('sv-SE', { timeZone }).replace(' ', 'T')
  return guess - (Date.parse(`${shown}Z`) - guess)
}

const daysBetween = (from, to) => Math.round((Date.parse(to) - Date.parse(from)) / dayMs)

async function refreshNames({ database, roomId }, names) {
  for (const subject of await database.prisma.subject.findMany({ where: { roomId }, select: { id: true, name: true } }))
    names.set(subject.id, subject.name)
}

/** One walk: most tasks are done, a few late, some skipped with a reason, some forgotten. */
async function walk(world) {
  const { database, roomId, moment, random, nowMs } = world
  const person = onDuty(world)
  const lateMs = random.uniform() < 0.12 ? 150 * minuteMs : 10 * minuteMs * random.uniform()
  const doneMs = Math.min(moment.atMs + lateMs, nowMs - 2 * minuteMs)
  const tasks = await database.prisma.task.findMany({
    where: { roomId, onDate: toDateColumn(moment.date), roundId: moment.round.id, state: 'open' },
    include: { subject: true },
    orderBy: { id: 'asc' },
  })
  const entries = []
  for (const task of tasks) {
    if (!task.isForStandIn && person === world.people.stand_in) continue
    // Today's round is under way: what comes last is still open when somebody opens the demo.
    if (moment.isToday && isLeftForTheVisitor({ task, tasks, startedMs: nowMs - moment.startsMs })) continue
    const chance = random.uniform()
    if (chance < 0.015) continue
    if (chance < 0.025) {
      await room.skipTask({ ctx: world.context(person, doneMs), roomId, taskId: task.id, reason: skipReason(random) })
      continue
    }
    entries.push({
      taskId: task.id,
      input: {
        values: answersFor({ ...world, task, atMs: doneMs }),
        confirmed: confirmedFields(task),
        again: false,
        doneAt: iso(doneMs),
        shownAmount: task.content.amount,
      },
    })
  }
  if (entries.length === 0) return
  await room.signOffRound({ ctx: world.context(person, doneMs), roomId, entries })
  await settle({ ...world, tasks, entries, doneMs })
}

/** Larvae that a morning found get their food: a link to the working culture, and a place in the waters. */
async function meetNewBatches({ database, roomId, people, waters, context }, atMs) {
  for (const batch of await database.prisma.larvalBatch.findMany({
    where: { roomId, subject: { endedAt: null } },
    include: { tank: true },
  })) {
    if (waters.hasBatch(batch.id)) continue
    const hatch = await database.prisma.fact.findFirst({
      where: { roomId, kind: 'hatch', data: { path: ['batchId'], equals: batch.id } },
    })
    waters.addBatch(batch.id, {
      larvae: hatch?.data.larvae ?? 150,
      volumeL: batch.tank.volumeL,
      hatchedMs: batch.hatchedOn.getTime() + 20 * 3_600_000,
      atMs,
    })
    const culture = await database.prisma.subject.findFirstOrThrow({ where: { roomId, name: 'R1' } })
    await room.createFeedLink({
      ctx: context(people.caretaker, atMs + 30 * minuteMs),
      roomId,
      input: { batchId: batch.id, cultureId: culture.id, fromOn: batch.hatchedOn.toISOString().slice(0, 10) },
    })
  }
}

/** A batch whose young have been moved to grow-out is closed by whoever moved them. */
async function closeMovedBatches({ database, roomId, people, context }, atMs) {
  const moved = await database.prisma.larvalBatch.findMany({
    where: { roomId, subject: { endedAt: null }, groups: { some: {} } },
    include: { subject: true },
  })
  for (const { id, subject } of moved) {
    const ctx = context(people.caretaker, atMs + 40 * minuteMs)
    await room.endLarvalBatch({
      ctx,
      roomId,
      batchId: id,
      input: { reason: 'All moved to grow-out.', version: subject.version },
    })
  }
}

// A round that has just begun is half done; one that is long over has a few left, late.
const isLeftForTheVisitor = ({ task, tasks, startedMs }) =>
  tasks.indexOf(task) >= Math.ceil(tasks.length * (startedMs > 100 * minuteMs ? 0.85 : 0.4))

const reasons = [
  'No clean water mixed yet.',
  'Looked fine, will do it this evening.',
  'The pump was being cleaned.',
  'Ran out of time before work.',
]
const skipReason = (random) => reasons[Math.floor(random.uniform() * reasons.length)]

function onDuty({ people, moment, random }) {
  const weekday = new Date(`${moment.date}T12:00:00Z`).getUTCDay()
  if (weekday === 0 || weekday === 6) return people.stand_in
  return moment.round.id === 'evening' && random.uniform() < 0.6 ? people.owner : people.caretaker
}

/** What the round did to the water. */
async function settle({ database, roomId, waters, entries, doneMs }) {
  const facts = await database.prisma.fact.findMany({
    where: { roomId, struckAt: null, signOff: { taskId: { in: entries.map((entry) => entry.taskId) } } },
  })
  for (const fact of facts) {
    if (fact.kind === 'harvest' && waters.hasCulture(fact.subjectId))
      waters.thin(fact.subjectId, fact.data.volumeL, doneMs)
    if (fact.kind === 'feeding' && fact.data.animals !== undefined && waters.hasBatch(fact.subjectId)) {
      const batch = waters.batchAt(fact.subjectId, doneMs)
      waters.feed(fact.subjectId, fact.data.animals / (batch.volumeL * 1000), doneMs)
    }
  }
}
