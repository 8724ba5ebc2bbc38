import { type Random, seededRandom } from '@fryward/live-feed'
import { type CureChange, clutchIntents } from '@fryward/shared'
import { dayMs } from '../calendar/elapsed.ts'
import { getSpecies } from '../species/index.ts'
import { SnapshotBuilder } from './snapshot-builder.ts'

const at = (ms: number) => new Date(Math.round(ms)).toISOString()
export const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random.uniform() * list.length)]!
export const between = (random: Random, from: number, to: number) => from + (to - from) * random.uniform()
const some = (random: Random, from: number, to: number) => Math.floor(between(random, from, to + 1))

const roundSets = [
  [{ id: 'once', name: 'Once', at: '09:00' }],
  [
    { id: 'morning', name: 'Morning', at: '07:00' },
    { id: 'midday', name: 'Midday', at: '12:30' },
    { id: 'evening', name: 'Evening', at: '18:30' },
  ],
  ['06:00', '09:00', '12:00', '15:00', '18:00', '21:00', '22:30', '23:30'].map((time, index) => ({
    id: `r${index}`,
    name: `Round ${index}`,
    at: time,
  })),
] as const
const speciesIds = [
  'amphiprion-ocellaris',
  'amphiprion-percula',
  'amphiprion-clarkii',
  'pterapogon-kauderni',
  'pseudochromis-fridmani',
  'elacatinus-figaro',
  'hippocampus-erectus',
  'other-9-gramma-loreto',
  'other-xm-opistognathus-aurifrons',
  'other-xf-synchiropus-ocellatus',
]

/** A room of anything that a room may hold, with some weeks of facts before `date`; the same for the same seed. */
export function randomRoom(seed: number, date: string): SnapshotBuilder {
  const random = seededRandom(seed)
  const morning = Date.parse(`${date}T00:00:00.000Z`)
  const room = new SnapshotBuilder({
    timeZone: pick(random, ['UTC', 'Europe/Lisbon', 'America/New_York', 'Pacific/Apia', 'Australia/Lord_Howe']),
    rounds: [...pick(random, roundSets)],
    lightsOnAt: '07:00',
    lightsOffAt: pick(random, ['19:00', '21:30']),
  })
  for (let bottle = 0; bottle < some(random, 0, 2); bottle += 1)
    room.concentrate({
      name: `bottle ${bottle}`,
      cellsPerMl: between(random, 1e9, 1e11),
      openedOn: at(morning - some(random, 0, 90) * dayMs).slice(0, 10),
      useBy: random.uniform() < 0.5 ? null : at(morning + some(random, -5, 30) * dayMs).slice(0, 10),
    })
  addCultures(room, random, morning)
  addFish(room, random, morning)
  addTanks(room, random, morning)
  if (random.uniform() < 0.5) addFoodPlan(room, random, date)
  if (random.uniform() < 0.5) addCures(room, random, date)
  return room
}

/** A plan that may be as good or as bad as any: of cultures that hold no rotifers, too. */
function addFoodPlan(room: SnapshotBuilder, random: Random, date: string): void {
  const { cultures, batches } = room.snapshot
  const litres = () => between(random, 0, 10)
  const from = () =>
    cultures
      .filter(() => random.uniform() < 0.5)
      .map(({ id }) => ({ cultureId: id, volumeL: litres(), animals: between(random, 0, 1e6) }))
  const orders = {
    date,
    batches: batches.map(({ id }) => {
      const chilled = random.uniform() < 0.3 ? { chilled: between(random, 0, 1e6) } : {}
      return { batchId: id, share: random.uniform(), from: from(), ...chilled }
    }),
    cultures: cultures.map(({ id }) => ({ cultureId: id, fedL: litres(), spareL: litres() })),
  }
  room.snapshot.foodPlan = { madeAt: at(Date.parse(`${date}T06:50:00.000Z`)), days: [orders] }
}

/** Anything that a room may have chosen on its plan, of any age. */
function addCures(room: SnapshotBuilder, random: Random, date: string): void {
  const { cultures, batches, clutches, room: settings } = room.snapshot
  const morning = Date.parse(`${date}T06:00:00.000Z`)
  const onDate = at(morning + some(random, -3, 5) * dayMs).slice(0, 10)
  const changes: CureChange[] = [
    ...cultures.map(({ id }): CureChange => {
      return {
        kind: 'start_culture',
        cultureId: id,
        volumeL: between(random, 1, 30),
        animals: between(random, 1, 1e7),
        onDate,
      }
    }),
    ...[...batches, ...clutches].map(({ id }): CureChange => {
      return { kind: 'keep_larvae', subjectId: id, larvae: some(random, 1, 400) }
    }),
    { kind: 'buy_in', animals: between(random, 1, 1e7), onDate },
    { kind: 'artemia_sooner' },
  ]
  for (const change of changes)
    if (random.uniform() < 0.5) {
      const chosenAt = at(morning - some(random, 0, 10) * dayMs)
      room.fact('cure', settings.id, chosenAt, { change, planMadeAt: chosenAt })
    }
}

function addCultures(room: SnapshotBuilder, random: Random, morning: number): void {
  const kinds = ['rotifer', 'rotifer', 'rotifer', 'microalgae', 'artemia_hatch', 'copepod'] as const
  for (let made = 0; made < some(random, 0, 5); made += 1) {
    const kind = pick(random, kinds)
    const ageDays = some(random, -1, 40)
    const startedMs = morning - (ageDays - random.uniform()) * dayMs
    const culture = room.culture({
      startedAt: at(startedMs),
      kind,
      strain: kind === 'rotifer' ? pick(random, ['L', 'S', 'SS'] as const) : null,
      volumeL: Number(between(random, 0.5, 60).toFixed(1)),
      temperatureC: Number(between(random, 0, 40).toFixed(1)),
      salinity: Number(between(random, 0, 45).toFixed(1)),
      hasFilter: random.uniform() < 0.4,
      isBackup: random.uniform() < 0.3,
      concentrateId: random.uniform() < 0.8 ? (room.snapshot.concentrates[0]?.id ?? null) : null,
      parentCultureId: random.uniform() < 0.2 ? (room.snapshot.cultures[0]?.id ?? null) : null,
    })
    if (random.uniform() < 0.7)
      room.fact('inoculation', culture.id, at(startedMs), { densityPerMl: some(random, 0, 150) })
    for (let day = 1; day <= ageDays; day += some(random, 1, 3)) {
      const ms = startedMs + day * dayMs
      const n = some(random, 0, 600)
      room.count(culture, at(ms), [n, n + some(random, 0, 40)], random.uniform() < 0.5 ? { eggs: 20, females: 40 } : {})
      const volumeL = Number((culture.volumeL * between(random, 0.05, 0.6)).toFixed(2))
      if (random.uniform() < 0.4)
        room.fact('harvest', culture.id, at(ms), {
          volumeL,
          parts: [{ to: pick(random, ['drain', 'chilled_reserve'] as const), volumeL }],
        })
      if (random.uniform() < 0.2)
        room.fact('observation', culture.id, at(ms), {
          signs: [pick(random, ['water_green', 'water_clear', 'bad_smell', 'foam', 'swimming_well'] as const)],
        })
      if (random.uniform() < 0.05) room.fact('care', culture.id, at(ms), { act: 'restart_culture' })
    }
    if (kind === 'artemia_hatch' && random.uniform() < 0.5)
      room.fact('care', culture.id, at(morning - between(random, 0, 2) * dayMs), { act: 'start_artemia' })
  }
}

function addFish(room: SnapshotBuilder, random: Random, morning: number): void {
  for (let made = 0; made < some(random, 0, 3); made += 1) {
    const species = pick(random, speciesIds)
    const pair = room.pair({
      species,
      isResting: random.uniform() < 0.2,
      formedOn: random.uniform() < 0.5 ? null : at(morning - 5 * dayMs).slice(0, 10),
    })
    const care = getSpecies(species).care.value
    for (let old = some(random, 0, 2); old > 0; old -= 1) {
      const clutch = room.clutch(pair, {
        spawnedAt: at(morning - (old * 18 - random.uniform() * 9) * dayMs),
        care,
        intent: pick(random, clutchIntents),
        ...(random.uniform() < 0.7 ? { eggs: some(random, 20, 900) } : {}),
      })
      if (old > 1)
        room.fact('hatch', clutch.id, at(morning - (old * 18 - 16) * dayMs), {
          hatchedOn: at(morning - (old * 18 - 15.5) * dayMs).slice(0, 10),
        })
      else if (random.uniform() < 0.5)
        room.fact('observation', clutch.id, at(Date.parse(clutch.spawnedAt) + dayMs), {
          signs: ['eggs_seen'],
          eggStage: 'orange',
        })
      for (let decided = 1; decided < 3; decided += 1)
        if (random.uniform() < 0.3)
          room.fact('decision', clutch.id, at(morning - (dayMs / 5) * decided), { intent: pick(random, clutchIntents) })
      if (random.uniform() < 0.3) room.fact('care', clutch.id, at(morning - dayMs / 4), { act: 'pull_nest' })
      if (random.uniform() < 0.3) room.fact('loss', clutch.id, at(morning - dayMs / 3), { number: 30, of: 'eggs' })
    }
  }
  for (let made = 0; made < some(random, 0, 3); made += 1) addBatch(room, random, morning)
  for (let made = 0; made < some(random, 0, 2); made += 1)
    room.group({ settledOn: at(morning - some(random, 0, 60) * dayMs).slice(0, 10), number: some(random, 0, 200) })
}

function addBatch(room: SnapshotBuilder, random: Random, morning: number): void {
  const age = some(random, 0, 30)
  const batch = room.batch({
    species: pick(random, [...speciesIds, 'unknown-species']),
    hatchedOn: at(morning - age * dayMs).slice(0, 10),
    tankId: room.tank({
      volumeL: Number(between(random, 2, 60).toFixed(1)),
      salinity: between(random, 15, 40),
      lightHours: pick(random, [null, 8, 24]),
    }).id,
    ...(random.uniform() < 0.7 ? { larvae: some(random, 0, 600) } : {}),
  })
  const [culture] = room.snapshot.cultures
  if (culture && random.uniform() < 0.8) room.feedLink(batch, culture)
  for (let day = 1; day < age; day += 1) {
    const ms = morning - (age - day) * dayMs
    if (random.uniform() < 0.6)
      room.fact('count', batch.id, at(ms), { of: 'prey_rotifers', animals: [some(random, 0, 120)], volumeMl: 10 })
    if (random.uniform() < 0.6)
      room.fact('feeding', batch.id, at(ms + 60_000), {
        food: 'rotifers',
        animals: some(random, 0, 300_000),
        amountMl: 500,
      })
    if (random.uniform() < 0.3)
      room.fact('water_test', batch.tankId, at(ms), {
        totalAmmoniaNMgPerL: between(random, 0, 2),
        pH: between(random, 7.5, 8.6),
        oxygenMgPerL: between(random, 2, 8),
      })
  }
}

function addTanks(room: SnapshotBuilder, random: Random, morning: number): void {
  for (let made = 0; made < some(random, 0, 4); made += 1) {
    const tank = room.tank({
      kind: pick(random, ['broodstock', 'larval', 'grow_out', 'quarantine', 'storage'] as const),
      volumeL: Number(between(random, 5, 400).toFixed(0)),
      temperatureC: Number(between(random, 18, 32).toFixed(1)),
      salinity: Number(between(random, 0, 45).toFixed(1)),
    })
    if (random.uniform() < 0.5)
      room.fact('water_test', tank.id, at(morning - between(random, 0, 3) * dayMs), {
        salinity: between(random, 20, 44),
        temperatureC: 27,
      })
  }
}
