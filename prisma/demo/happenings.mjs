// The events of the demo room that no task asks for: vessels that come and go, a crash, a wrong entry corrected.
import * as room from '@fryward/room'
import { culture, eggsOf, layings, pairs } from './story.mjs'

const dayMs = 86_400_000
const iso = (ms) => new Date(ms).toISOString()

/** In order of time; `daysAgo` says on which day before today, in the morning unless a round is named. */
export function happenings(world) {
  return [
    {
      daysAgo: 36,
      run: (atMs) =>
        startCulture(world, atMs, {
          name: 'R2',
          from: 'R1',
          densityPerMl: 55,
          truth: { growthPerDay: 0.5, capacityPerMl: 450 },
        }),
    },
    {
      daysAgo: 34,
      run: (atMs) =>
        startCulture(world, atMs, {
          name: 'R3',
          densityPerMl: 60,
          volumeL: 12,
          salinity: 30,
          truth: { growthPerDay: 0.26, capacityPerMl: 260 },
        }),
    },
    { daysAgo: 31, run: (atMs) => clutchLost(world, atMs) },
    { daysAgo: 29, roundId: 'evening', run: (atMs) => miscount(world, atMs) },
    { daysAgo: 28, run: (atMs) => waterTest(world, atMs) },
    { daysAgo: 20, run: (atMs) => newPair(world, atMs) },
    { daysAgo: 16, run: (atMs) => leaveWithParents(world, atMs, 'Copper pair') },
    { daysAgo: 14, run: (atMs) => waterTest(world, atMs) },
    { daysAgo: 13, run: async (atMs) => world.waters.crash(await idOf(world, 'R2'), atMs) },
    { daysAgo: 11, run: (atMs) => crash(world, atMs) },
    {
      daysAgo: 10,
      run: (atMs) =>
        startCulture(world, atMs, {
          name: 'R4',
          from: 'R1',
          densityPerMl: 60,
          isBackup: true,
          truth: { growthPerDay: 0.45, capacityPerMl: 420 },
        }),
    },
    { daysAgo: 3, run: (atMs) => waterTest(world, atMs) },
    ...Object.entries(layings).flatMap(([pair, days]) =>
      days.map((daysAgo) => ({ daysAgo, roundId: 'midday', run: (atMs) => lay(world, atMs, pair) })),
    ),
  ]
}

const find = async ({ database, roomId }, name) =>
  (await database.prisma.subject.findFirst({ where: { roomId, name, endedAt: null } }))?.id

async function idOf(world, name) {
  const id = await find(world, name)
  if (id === undefined) throw new Error(`The demo room has no ${name}`)
  return id
}

async function startCulture(world, atMs, { name, from, densityPerMl, truth, ...more }) {
  const { database, roomId, people, waters } = world
  const parent = from && (await find(world, from))
  const bottle = await database.prisma.concentrate.findFirstOrThrow({ where: { roomId } })
  const input = culture(name, {
    volumeL: 18,
    startDensityPerMl: densityPerMl,
    concentrateId: bottle.id,
    parentCultureId: parent ?? null,
    startedAt: iso(atMs),
    ...more,
  })
  const made = await room.createCulture({ ctx: world.context(people.caretaker, atMs), roomId, input })
  waters.addCulture(made.id, { volumeL: input.volumeL, densityPerMl, atMs, ...truth })
}

async function leaveWithParents(world, atMs, pair) {
  const { roomId, people } = world
  const ctx = world.context(people.owner, atMs)
  const pairId = await idOf(world, pair)
  const clutch = (await room.listClutches({ ctx, roomId })).find(
    (each) => each.pairId === pairId && each.state === 'incubating',
  )
  if (clutch)
    await room.changeClutch({
      ctx,
      roomId,
      clutchId: clutch.id,
      input: { intent: 'leave_with_parents', version: clutch.version },
    })
}

async function crash(world, atMs) {
  const { database, roomId, people } = world
  const id = await find(world, 'R2')
  if (!id) return
  const ctx = world.context(people.caretaker, atMs)
  await room.recordFact({
    ctx,
    roomId,
    input: {
      kind: 'observation',
      subjectId: id,
      data: { signs: ['sinking', 'bad_smell'], note: 'Gone overnight. The air line had slipped off.' },
    },
  })
  const { version } = await database.prisma.subject.findFirstOrThrow({ where: { roomId, id } })
  await room.endCulture({
    ctx,
    roomId,
    cultureId: id,
    input: { reason: 'Crashed: the air line slipped off overnight.', version },
  })
}

async function miscount(world, atMs) {
  const { roomId, people } = world
  const id = await find(world, 'R1')
  const ctx = world.context(people.stand_in, atMs)
  const wrong = await room.recordFact({
    ctx,
    roomId,
    input: {
      kind: 'count',
      subjectId: id,
      data: { of: 'culture', animals: [2210, 1980], volumeMl: 1, dilution: 10 },
    },
  })
  await room.strikeFact({
    ctx: world.context(people.stand_in, atMs + 60_000),
    roomId,
    factId: wrong.id,
    reason: 'Typed the dilution although nothing was diluted.',
  })
}

async function newPair(world, atMs) {
  const { roomId, people } = world
  const { tank, formedDaysAgo: _formedDaysAgo, ...pair } = pairs.find((each) => each.name === 'Slate pair')
  const input = {
    ...pair,
    tankId: await idOf(world, tank),
    formedOn: iso(atMs).slice(0, 10),
    isResting: false,
    note: 'Young pair, keep an eye on them.',
  }
  await room.createPair({ ctx: world.context(people.owner, atMs), roomId, input })
}

async function waterTest(world, atMs) {
  const { roomId, people } = world
  for (const name of ['N1', 'N2', 'L1', 'L2']) {
    const data = {
      temperatureC: 26.4,
      salinity: name.startsWith('L') ? 30 : 33,
      pH: 8.1,
      totalAmmoniaNMgPerL: 0.05,
      nitriteNMgPerL: 0.02,
    }
    await room.recordFact({
      ctx: world.context(people.owner, atMs),
      roomId,
      input: { kind: 'water_test', subjectId: await idOf(world, name), data },
    })
  }
}

/** Eggs that the morning's look did not find, or was not asked for, are seen at midday. */
async function lay(world, atMs, pair) {
  const { roomId, people } = world
  const ctx = world.context(people.caretaker, atMs)
  const pairId = await idOf(world, pair)
  const known = (await room.listClutches({ ctx, roomId })).some(
    (clutch) => clutch.pairId === pairId && atMs - Date.parse(clutch.spawnedAt) < 2 * dayMs,
  )
  if (!known)
    await room.createClutch({
      ctx,
      roomId,
      input: { pairId, spawnedAt: iso(atMs - 90 * 60_000), eggs: eggsOf[pair], intent: 'undecided' },
    })
}

async function clutchLost(world, atMs) {
  const { database, roomId, people } = world
  const ctx = world.context(people.caretaker, atMs)
  const clutch = (await room.listClutches({ ctx, roomId })).find((each) => each.state === 'incubating' && each.eggs)
  if (!clutch) return
  const lost = await database.prisma.fact.findMany({
    where: { roomId, subjectId: clutch.id, kind: 'loss', struckAt: null },
  })
  // Those found dead before are out of the book already.
  const number = clutch.eggs - lost.reduce((sum, { data }) => sum + data.number, 0)
  await room.recordFact({
    ctx,
    roomId,
    input: { kind: 'loss', subjectId: clutch.id, data: { number, of: 'eggs', cause: 'eaten by the parents' } },
  })
}
