// What happens in the demo room, day by day before today. Invented; people are called by their role.

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
  cultures: [culture('R1', { volumeL: 18, startDensityPerMl: 70 })],
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

/** What people would say to a field because of what happens that day; undefined leaves it to the water. */
export function storyOf({ daysAgo, nameOf }) {
  return {
    answer({ field, task, atMs }) {
      const ago = daysAgo(atMs)
      if (task.subject.kind === 'pair' && field.name === 'eggs')
        return (layings[nameOf(task.subjectId)] ?? []).includes(ago)
      if (task.subject.kind === 'pair' && field.name === 'number')
        return (layings[nameOf(task.subjectId)] ?? []).includes(ago) ? eggsOf[nameOf(task.subjectId)] : undefined
      if (task.subject.kind === 'pair' && field.name === 'laid')
        return (layings[nameOf(task.subjectId)] ?? []).includes(ago) ? 'today' : undefined
      if (field.name === 'eggStage') return eggStage(daysSince(task.subject.createdAt, atMs))
      if (field.name === 'signs' && nameOf(task.subjectId) === 'R2' && ago <= 13 && ago >= 11)
        return ['swimming_slow', 'bad_smell']
      if (field.name === 'signs' && nameOf(task.subjectId) === 'Slate pair' && ago % 6 === 0) return ['fighting']
      return undefined
    },
  }
}

const daysSince = (at, atMs) => (atMs - at.getTime()) / 86_400_000
const eggStage = (age) => (age < 2 ? 'orange' : age < 4 ? 'dark' : age < 5.5 ? 'eyed' : 'silver')
