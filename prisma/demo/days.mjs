// Lives through the demo room's days: lists are opened by the clock, rounds are walked by whoever is on duty, not always
// in time, and things happen. Everything goes through the use cases of @fryward/room.
import { addDays, daysBetween, localDate } from '@fryward/husbandry'
import * as room from '@fryward/room'
import { toDateColumn } from '@fryward/store'
import { answersFor, confirmedFields } from './answers.mjs'
import { happenings } from './happenings.mjs'
import { storyOf } from './story.mjs'

const minuteMs = 60_000
const iso = (ms) => new Date(ms).toISOString()

/**
 * Lives through the rounds that begin after `fromMs` and have been under way for a quarter of an hour by `untilMs`.
 * Days are counted back from `today`; nothing is done after `untilMs`.
 */
export async function liveThrough({ database, roomId, people, waters, random, today, fromMs, untilMs }) {
  const { timeZone, rounds } = await database.prisma.room.findUniqueOrThrow({ where: { id: roomId } })
  const names = new Map()
  const nameOf = (id) => names.get(id)
  const daysAgo = (atMs) => daysBetween(localDate({ timeZone, at: iso(atMs) }), today)
  const world = {
    database,
    roomId,
    people,
    random,
    waters,
    timeZone,
    nameOf,
    daysAgo,
    untilMs,
    context: (person, atMs) => contextOf(database, person, Math.min(atMs, untilMs)),
  }
  const events = happenings(world).filter((each) => each.daysAgo <= daysAgo(fromMs))
  for (const moment of momentsOf({ today, fromMs, untilMs, timeZone, rounds })) {
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
    await followBatches(world, moment.atMs)
    if (moment.isLastOfDay) process.stderr.write('.')
  }
}

function contextOf(database, person, atMs) {
  return { database, actor: { kind: 'person', userId: person.userId, name: person.name }, now: iso(atMs) }
}

/** The rounds of those days, with the time at which somebody walks each. */
function momentsOf({ today, fromMs, untilMs, timeZone, rounds }) {
  const moments = []
  for (let date = localDate({ timeZone, at: iso(fromMs) }); date <= today; date = addDays(date, 1)) {
    for (const [index, round] of rounds.entries()) {
      const startsMs = localInstantMs({ date, time: round.at, timeZone })
      if (startsMs > fromMs && startsMs + 15 * minuteMs <= untilMs)
        moments.push({
          date,
          round,
          startsMs,
          atMs: startsMs,
          isLastOfDay: index === rounds.length - 1,
          isToday: date === today,
        })
    }
  }
  return moments
}

/** When the clocks of a zone show a date and time; the demo's times are none that a change of clocks skips. */
export function localInstantMs({ date, time, timeZone }) {
  const guess = Date.parse(`${date}T${time}:00Z`)
  const shown = new Date(guess).toLocaleString('sv-SE', { timeZone }).replace(' ', 'T')
  return guess - (Date.parse(`${shown}Z`) - guess)
}

async function refreshNames({ database, roomId }, names) {
  for (const subject of await database.prisma.subject.findMany({ where: { roomId }, select: { id: true, name: true } }))
    names.set(subject.id, subject.name)
}

/** One walk: most tasks are done, a few late, some skipped with a reason, some forgotten. */
async function walk(world) {
  const { database, roomId, moment, random, untilMs } = world
  const person = onDuty(world)
  const lateMs = random.uniform() < 0.12 ? 150 * minuteMs : 10 * minuteMs * random.uniform()
  const doneMs = Math.min(moment.atMs + lateMs, untilMs - 2 * minuteMs)
  const tasks = await database.prisma.task.findMany({
    where: { roomId, onDate: toDateColumn(moment.date), roundId: moment.round.id, state: 'open' },
    include: { subject: true },
    orderBy: { id: 'asc' },
  })
  const entries = []
  for (const task of tasks) {
    if (!task.isForStandIn && person === world.people.stand_in) continue
    // Today's round is under way: what comes last is still open when somebody opens the demo.
    if (moment.isToday && isLeftForTheVisitor({ task, tasks, startedMs: untilMs - moment.startsMs })) continue
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

/**
 * Larvae that a morning found get their food (a link to the working culture, and a place in the waters); a batch whose
 * young have been moved to grow-out is closed by whoever moved them.
 */
async function followBatches(world, atMs) {
  const { database, roomId, waters } = world
  const batches = await database.prisma.larvalBatch.findMany({
    where: { roomId, subject: { endedAt: null } },
    include: { tank: true, subject: true, groups: true },
  })
  for (const batch of batches) {
    if (!waters.hasBatch(batch.id)) await meet(world, { batch, atMs })
    if (batch.groups.length > 0) await close(world, { batch, atMs })
  }
}

async function meet({ database, roomId, people, waters, context }, { batch, atMs }) {
  const hatch = await database.prisma.fact.findFirst({
    where: { roomId, kind: 'hatch', data: { path: ['batchId'], equals: batch.id } },
  })
  waters.addBatch(batch.id, {
    larvae: hatch?.data.larvae ?? 150,
    volumeL: batch.tank.volumeL,
    hatchedMs: batch.hatchedOn.getTime() + 20 * 3_600_000,
    atMs,
  })
  // Whoever said what hatched has said what feeds it.
  if (await database.prisma.feedLink.findFirst({ where: { roomId, batchId: batch.id, untilOn: null } })) return
  const culture = await database.prisma.subject.findFirstOrThrow({ where: { roomId, name: 'R1' } })
  await room.createFeedLink({
    ctx: context(people.caretaker, atMs + 30 * minuteMs),
    roomId,
    input: { batchId: batch.id, cultureId: culture.id, fromOn: batch.hatchedOn.toISOString().slice(0, 10) },
  })
}

async function close({ roomId, people, context }, { batch, atMs }) {
  await room.endLarvalBatch({
    ctx: context(people.caretaker, atMs + 40 * minuteMs),
    roomId,
    batchId: batch.id,
    input: { reason: 'All moved to grow-out.', version: batch.subject.version },
  })
}

// A round that has just begun is half done; one that is long over has a few left, late.
const isLeftForTheVisitor = ({ task, tasks, startedMs }) =>
  tasks.indexOf(task) >= Math.ceil(tasks.length * (startedMs > 100 * minuteMs ? 0.85 : 0.4))

const reasons = [
  'Ran out of time before work.',
  'The power was off for an hour.',
  'Called away in the middle of the round.',
  'The sink was full of nets, could not get at it.',
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
    if (fact.kind === 'care' && fact.data.act === 'start_artemia') waters.startCone(fact.subjectId, fact.data.cystsG)
    if (fact.kind === 'feeding' && fact.data.animals !== undefined && waters.hasBatch(fact.subjectId)) {
      const batch = waters.batchAt(fact.subjectId, doneMs)
      waters.feed(fact.subjectId, fact.data.animals / (batch.volumeL * 1000), doneMs)
    }
  }
}
