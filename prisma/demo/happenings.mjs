// The events of the demo room that no task asks for: vessels that come and go, a crash, a wrong entry corrected.
import * as room from '@fryward/room'
import { culture, eggsOf, layings, pairs } from './story.mjs'

const dayMs = 86_400_000
const iso = (ms) => new Date(ms).toISOString()

/** In order of time; `daysAgo` says on which day before today, in the morning unless a round is named. */
export function happenings(world) {
  const { database, roomId, people, waters } = world
  const idOf = async (name) =>
    (await database.prisma.subject.findFirstOrThrow({ where: { roomId, name, endedAt: null } })).id
  const find = async (name) => (await database.prisma.subject.findFirst({ where: { roomId, name, endedAt: null } }))?.id
  const as = (person, atMs) => world.context(person, atMs)

  async function startCulture(atMs, { name, from, densityPerMl, truth, ...more }) {
    const [parent] = [from ? await find(from) : undefined]
    const bottle = await database.prisma.concentrate.findFirstOrThrow({ where: { roomId } })
    const input = culture(name, {
      volumeL: 18,
      startDensityPerMl: densityPerMl,
      concentrateId: bottle.id,
      parentCultureId: parent ?? null,
      startedAt: iso(atMs),
      ...more,
    })
    const made = await room.createCulture({ ctx: as(people.caretaker, atMs), roomId, input })
    waters.addCulture(made.id, { volumeL: input.volumeL, densityPerMl, atMs, ...truth })
  }

  async function leaveWithParents(atMs, pair) {
    const ctx = as(people.owner, atMs)
    const pairId = await idOf(pair)
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

  async function crash(atMs) {
    const id = await find('R2')
    if (!id) return
    const ctx = as(people.caretaker, atMs)
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

  async function miscount(atMs) {
    const id = await find('R1')
    const ctx = as(people.stand_in, atMs)
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
      ctx: as(people.stand_in, atMs + 60_000),
      roomId,
      factId: wrong.id,
      reason: 'Typed the dilution although nothing was diluted.',
    })
  }

  async function newPair(atMs) {
    const { tank, formedDaysAgo: _formedDaysAgo, ...pair } = pairs.find((each) => each.name === 'Slate pair')
    const input = {
      ...pair,
      tankId: await idOf(tank),
      formedOn: iso(atMs).slice(0, 10),
      isResting: false,
      note: 'Young pair, keep an eye on them.',
    }
    await room.createPair({ ctx: as(people.owner, atMs), roomId, input })
  }

  async function waterTest(atMs) {
    for (const name of ['N1', 'N2', 'L1', 'L2']) {
      const data = {
        temperatureC: 26.4,
        salinity: name.startsWith('L') ? 30 : 33,
        pH: 8.1,
        totalAmmoniaNMgPerL: 0.05,
        nitriteNMgPerL: 0.02,
      }
      await room.recordFact({
        ctx: as(people.owner, atMs),
        roomId,
        input: { kind: 'water_test', subjectId: await idOf(name), data },
      })
    }
  }

  /** Eggs that the morning's look did not find, or was not asked for, are seen at midday. */
  async function lay(atMs, pair) {
    const ctx = as(people.caretaker, atMs)
    const pairId = await idOf(pair)
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

  async function clutchLost(atMs) {
    const ctx = as(people.caretaker, atMs)
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

  return [
    {
      daysAgo: 36,
      run: (atMs) =>
        startCulture(atMs, {
          name: 'R2',
          from: 'R1',
          densityPerMl: 55,
          truth: { growthPerDay: 0.5, capacityPerMl: 450 },
        }),
    },
    {
      daysAgo: 34,
      run: (atMs) =>
        startCulture(atMs, {
          name: 'R3',
          densityPerMl: 60,
          volumeL: 12,
          salinity: 30,
          truth: { growthPerDay: 0.26, capacityPerMl: 260 },
        }),
    },
    { daysAgo: 31, run: clutchLost },
    { daysAgo: 29, roundId: 'evening', run: miscount },
    { daysAgo: 28, run: waterTest },
    { daysAgo: 20, run: newPair },
    { daysAgo: 16, run: (atMs) => leaveWithParents(atMs, 'Copper pair') },
    { daysAgo: 14, run: waterTest },
    { daysAgo: 13, run: async (atMs) => waters.crash(await idOf('R2'), atMs) },
    { daysAgo: 11, run: crash },
    {
      daysAgo: 10,
      run: (atMs) =>
        startCulture(atMs, {
          name: 'R4',
          from: 'R1',
          densityPerMl: 60,
          isBackup: true,
          truth: { growthPerDay: 0.45, capacityPerMl: 420 },
        }),
    },
    { daysAgo: 3, run: waterTest },
    ...Object.entries(layings).flatMap(([pair, days]) =>
      days.map((daysAgo) => ({ daysAgo, roundId: 'midday', run: (atMs) => lay(atMs, pair) })),
    ),
  ]
}
