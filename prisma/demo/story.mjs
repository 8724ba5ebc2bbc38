// What happens in the demo room, day by day before today. Invented; people are called by their role.

import { jarMl } from './waters.mjs'

export const daysOfHistory = 42

/** Days before today on which each pair lays. */
export const layings = { 'Copper pair': [33, 19, 5], 'Juniper pair': [36, 25, 14, 3], 'Slate pair': [] }
export const eggsOf = { 'Copper pair': 420, 'Juniper pair': 360 }

export const roomSetup = (timeZone) => ({
  name: 'Demo room',
  timeZone,
  units: 'metric',
  lightsOnAt: '07:00',
  lightsOffAt: '19:30',
  salinity: 33,
  temperatureC: 26.5,
  rounds: [
    { id: 'morning', name: 'Morning', at: '07:00' },
    { id: 'midday', name: 'Midday', at: '12:30' },
    { id: 'evening', name: 'Evening', at: '18:00' },
  ],
  concentrate: { name: 'Green concentrate', cellsPerMl: 68e9, openedOn: null, useBy: null },
  // Put into their tanks afterwards, each with where it nests.
  pairs: [],
  batches: [],
  groups: [],
  tanks: [
    tank('N1', 'broodstock', 90, { note: 'Clay tile on the left.' }),
    tank('N2', 'broodstock', 90),
    tank('N3', 'broodstock', 70),
    tank('L1', 'larval', 40, { salinity: 30 }),
    tank('L2', 'larval', 40, { salinity: 30 }),
    tank('L3', 'larval', 40, { salinity: 30 }),
    tank('G1', 'grow_out', 150, { hasFilter: true }),
    tank('Mixing barrel', 'storage', 200),
  ],
  cultures: [
    culture('R1', { volumeL: 18, startDensityPerMl: 70 }),
    {
      name: 'Brine shrimp cone',
      kind: 'artemia_hatch',
      strain: null,
      volumeL: 2,
      temperatureC: 28,
      salinity: 30,
      hasFilter: false,
      isBackup: false,
      note: '',
    },
  ],
})

function tank(name, kind, volumeL, more = {}) {
  return {
    name,
    kind,
    volumeL,
    temperatureC: kind === 'storage' ? 25 : 26.5,
    salinity: 33,
    hasFilter: kind === 'broodstock',
    note: '',
    ...more,
  }
}

export function culture(name, more) {
  return {
    name,
    kind: 'rotifer',
    strain: 'L',
    temperatureC: 25,
    salinity: 22,
    hasFilter: false,
    isBackup: false,
    note: '',
    ...more,
  }
}

export const pairs = [
  { name: 'Copper pair', species: 'amphiprion-ocellaris', tank: 'N1', nestSite: 'clay tile', formedDaysAgo: 500 },
  { name: 'Juniper pair', species: 'amphiprion-percula', tank: 'N2', nestSite: 'upturned pot', formedDaysAgo: 700 },
  { name: 'Slate pair', species: 'premnas-biaculeatus', tank: 'N3', nestSite: 'pot', formedDaysAgo: 20 },
]

/** Nights from laying to hatching at this room's warmth. */
const hatchAfterDays = 7
/** Share of the eggs that hatch, by the day of laying. */
const hatchShare = { 36: 0.35, 25: 0.78, 14: 0.66 }

/** What people would say to a field because of what happens that day; undefined leaves it to the water. */
export function storyOf({ daysAgo, nameOf, waters, random }) {
  const laidOn = (pair, ago) => (layings[pair] ?? []).includes(ago)
  const tells = {
    // The room gets its backup on a day of its own (happenings.mjs); until then it has to wait.
    room: ({ field, task }) =>
      task.ruleId === 'rotifer-backup-wanted' && field.name === 'answer' ? 'later' : undefined,
    pair: ({ field, name, ago }) => {
      if (field.name === 'eggs') return laidOn(name, ago)
      if (field.name === 'number' && laidOn(name, ago)) return eggsOf[name]
      if (field.name === 'laid' && laidOn(name, ago)) return 'today'
      if (field.name === 'signs' && name === 'Slate pair' && ago % 7 === 0) return ['fighting']
      return undefined
    },
    clutch: ({ field, task, ago, atMs }) => {
      const laidAgo = daysAgo(task.subject.createdAt.getTime())
      // Whoever missed that morning says it at the next.
      const isAfter = laidAgo - ago > hatchAfterDays
      if (field.name === 'eggStage') return eggStage((atMs - task.subject.createdAt.getTime()) / 86_400_000)
      if (field.name === 'hatched') return isAfter ? 'all' : 'none'
      if (field.name === 'hatching') return laidAgo - ago >= hatchAfterDays ? 'most' : 'none'
      if (field.name === 'larvae' && isAfter && hatchShare[laidAgo])
        return Math.round((360 * hatchShare[laidAgo]) / 10) * 10
      if (field.name === 'dead') return random.uniform() < 0.3 ? Math.ceil(random.uniform() * 6) : 0
      return undefined
    },
    culture: ({ field, task, name, ago }) => {
      if (task.ruleId === 'artemia-harvest') return harvestOf(field, waters.jarPerMl(task.subjectId))
      return field.name === 'signs' && name === 'R2' && ago <= 13 && ago >= 11
        ? ['swimming_slow', 'bad_smell']
        : undefined
    },
    larval_batch: ({ field, task, atMs }) => {
      if (!waters.hasBatch(task.subjectId)) return undefined
      const batch = waters.batchAt(task.subjectId, atMs)
      const ageDays = (atMs - batch.hatchedMs) / 86_400_000
      if (field.name === 'settled') return ageDays > 19 ? 'most' : ageDays > 13 ? 'some' : 'none'
      if (field.name === 'dead') return waters.sample(batch.larvae * (ageDays < 5 ? 0.03 : 0.008))
      if (field.name === 'number') return Math.max(1, Math.round(batch.larvae))
      return undefined
    },
  }
  return {
    answer: ({ field, task, atMs }) => {
      const measured = measuredToday(field.name, random)
      if (measured !== undefined) return measured
      return tells[task.subject.kind]?.({ field, task, atMs, ago: daysAgo(atMs), name: nameOf(task.subjectId) })
    },
  }
}

/** Three drops of the jar, and how far it was filled. */
function harvestOf(field, perMl) {
  if (perMl === undefined) return undefined
  if (field.name === 'keptMl') return jarMl
  if (field.name !== 'count') return undefined
  const drop = Math.round(perMl * field.volumeMl)
  return { animals: [drop, drop + 3, Math.max(0, drop - 2)], volumeMl: field.volumeMl, dilution: 1 }
}

/** Water tests of a room that is doing well. */
function measuredToday(name, random) {
  if (name === 'totalAmmoniaNMgPerL') return random.uniform() < 0.8 ? 0 : 0.05
  if (name === 'nitriteNMgPerL') return 0.02
  if (name === 'nitrateNMgPerL') return Math.round(4 + 8 * random.uniform())
  if (name === 'pH') return Number((8.05 + 0.1 * random.uniform()).toFixed(2))
  return undefined
}

const eggStage = (age) => (age < 2 ? 'orange' : age < 4 ? 'dark' : age < 5.5 ? 'eyed' : 'silver')
