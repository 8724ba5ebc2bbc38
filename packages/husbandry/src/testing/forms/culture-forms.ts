import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import type { SnapshotBuilder } from '../snapshot-builder.ts'
import { cultureSigns, type Form, note, waterOf } from './form.ts'
import {
  choose,
  crashedRoom,
  cultureRoom,
  emptyRoom,
  formDate,
  hatchRoom,
  larvaeRoom,
  steadyRoom,
} from './form-rooms.ts'

const algae = { kind: 'microalgae', volumeL: 10, startedAt: '2026-03-03T08:00:00.000Z' } as const
const copepods = { kind: 'copepod', volumeL: 10 } as const
const morning = `${formDate}T06:40:00.000Z`

const counted = (perMl: number, at = morning, given: Partial<SnapshotCulture> = {}): SnapshotBuilder => {
  const { room, culture } = cultureRoom(given)
  room.count(culture, at, [perMl, perMl, perMl])
  return room
}
const seen = (given: Partial<SnapshotCulture>, sign: 'bad_smell' | 'swimming_slow'): SnapshotBuilder => {
  const { room, culture } = cultureRoom(given)
  room.fact('observation', culture.id, '2026-03-09T18:00:00.000Z', { signs: [sign] })
  return room
}
const naupliiCounted = (): SnapshotBuilder => {
  const { room, culture } = cultureRoom(copepods)
  for (const [of, animals] of [
    ['culture', 20],
    ['copepod_nauplii', 60],
  ] as const)
    room.fact('count', culture.id, '2026-03-09T07:10:00.000Z', { of, animals: [animals], volumeMl: 10 })
  return room
}

const doneAboutIt = ['did: one of nothing, thinned, restarted', 'the least first'] as const
const waterLook = ['water: one of water_green, water_tinted, water_clear', 'the fullest first'] as const

const microalgae: readonly Form[] = [
  {
    rule: 'microalgae-look',
    of: 'a culture',
    ask: () => cultureRoom(algae).room,
    fields: [['colour: one of water_green, water_tinted, water_clear, required', 'the fullest first'], note],
  },
  {
    rule: 'microalgae-split',
    of: '10 L',
    ask: () => cultureRoom(algae).room,
    fields: [['amountL: 0.1 to 10 L, likely 1.667 to 15, by 0.1, usual 5', 'half of it; no more than it holds']],
  },
]

const ofCopepods: readonly Form[] = [
  {
    rule: 'copepod-count',
    of: 'a culture that nobody has counted',
    ask: () => cultureRoom(copepods).room,
    fields: [
      ['count: 0 to 1000 per_mL, likely 0.05 to 20, 3 x 10 mL, required', 'one in 20 mL is a thin start'],
      ['nauplii: 0 to 1000 per_mL, likely 0 to 50, 3 x 10 mL', 'young may be none, and are more than the grown'],
      cultureSigns,
    ],
  },
  {
    rule: 'copepod-count',
    of: 'a culture that held 2 a mL three days ago',
    ask: () => {
      const { room, culture } = cultureRoom(copepods)
      room.fact('count', culture.id, '2026-03-07T07:10:00.000Z', { of: 'culture', animals: [20], volumeMl: 10 })
      return room
    },
    fields: [
      ['count: 0 to 1000 per_mL, likely 0.5 to 8, 3 x 10 mL, usual 2, required', 'a quarter, to four times as many'],
      ['nauplii: 0 to 1000 per_mL, likely 0 to 50, 3 x 10 mL', 'young may be none, and are more than the grown'],
      cultureSigns,
    ],
  },
  {
    rule: 'copepod-harvest',
    of: '10 L',
    ask: naupliiCounted,
    fields: [
      [
        'parts: up to 10 L, likely up to 3.75, suggested 2.5 L drain',
        'a quarter, where no other fish live; half as much again is likely',
      ],
      ['filledL: 0 to 10 L, likely 0 to 5, by 0.1, usual 2.5', '0 where it waits; twice as much is likely'],
    ],
  },
  {
    rule: 'copepod-feed',
    of: '10 L, of a bottle',
    ask: () => cultureRoom(copepods).room,
    fields: [
      waterLook,
      cultureSigns,
      ['amountMl: 0.1 to 2000 mL, likely 0.2667 to 2.4, by 0.1, usual 0.8', '1 in 100; a fifth of the vessel at most'],
    ],
  },
  {
    rule: 'copepod-siphon',
    of: '10 L',
    ask: () => cultureRoom(copepods).room,
    fields: [['amountL: 0.1 to 10 L, likely 0.6667 to 6, by 0.1, usual 2', 'a fifth of it'], ...waterOf(25, 25)],
  },
  {
    rule: 'copepod-trouble',
    of: 'a culture that smells',
    ask: () => seen(copepods, 'bad_smell'),
    fields: [cultureSigns, doneAboutIt, note],
  },
]

const ofRotifers: readonly Form[] = [
  {
    rule: 'rotifer-count',
    of: 'a culture that nobody has counted',
    ask: () => cultureRoom().room,
    fields: [
      [
        'count: 0 to 160000 per_mL, likely 20 to 1500, 3 x 1 mL with their eggs, required',
        'from a thin start to the densest of a room without oxygen; 1.6e5 is the most that was ever held (Yoshimura et al. 1996)',
      ],
      cultureSigns,
    ],
  },
  {
    rule: 'rotifer-count',
    of: 'a culture that held 240 a mL three days ago and was thinned by none',
    ask: () => counted(240, '2026-03-07T06:30:00.000Z'),
    fields: [
      [
        'count: 0 to 160000 per_mL, likely 157.3 to 1416, 3 x 1 mL with their eggs, usual 472, required',
        'about as many again after three days at 0.23 a day; a third, and three times as many',
      ],
      cultureSigns,
    ],
  },
  {
    rule: 'rotifer-recount',
    of: 'a culture of 240 a mL in which 110 were counted',
    ask: () => {
      const { room, culture } = steadyRoom()
      room.count(culture, `${formDate}T06:50:00.000Z`, [110, 110, 110], { eggs: 40, females: 60 })
      return room
    },
    fields: [
      [
        'count: 0 to 160000 per_mL, likely 55 to 480, 3 x 1 mL with their eggs, required',
        'half of what was counted, to twice what was expected: nothing is ghosted that would be tapped',
      ],
      cultureSigns,
    ],
  },
  {
    rule: 'culture-water-test',
    of: '18 L at 25 and 25 C',
    ask: () => counted(240),
    fields: [
      ['totalAmmoniaNMgPerL: 0 to 100 mg_per_L, likely 0 to 20, by 0.1, required', 'ten times a tank’s, as it is fed'],
      ['pH: 4 to 11 pH, likely 6.5 to 8.5, by 0.1', 'a fed culture is sourer than a tank'],
      ['salinity: 0 to 45 psu, likely 22 to 28, by 0.5', 'what is set, three either way'],
      ['oxygenMgPerL: 0 to 30 mg_per_L, likely 3 to 9, by 0.1', '7 is what such water holds'],
      ['temperatureC: 0 to 40 degC, likely 22 to 28, by 0.1', 'what is set, three degrees either way'],
    ],
  },
  {
    rule: 'rotifer-harvest',
    of: '18 L at 240 a mL',
    ask: () => steadyRoom().room,
    fields: [
      [
        'parts: up to 18 L, likely up to 3.9, suggested 2.6 L drain',
        'what it grew by, where no other fish live; half as much again is likely',
      ],
      ['filledL: 0 to 18 L, likely 0 to 5.2, by 0.1, usual 2.6', '0 where it waits; twice as much is likely'],
    ],
  },
  {
    rule: 'rotifer-refill',
    of: '3.6 L of 18 L',
    ask: () => {
      const { room, culture } = steadyRoom()
      const parts = [{ to: 'drain' as const, volumeL: 3.6 }]
      room.fact('harvest', culture.id, `${formDate}T07:10:00.000Z`, { volumeL: 3.6, parts })
      return room
    },
    fields: [
      ['amountL: 0.1 to 18 L, likely 1.2 to 10.8, by 0.1, usual 3.6', 'no more than the vessel holds'],
      ...waterOf(25, 25),
    ],
  },
  {
    rule: 'rotifer-feed',
    of: '18 L at 260 a mL',
    ask: () => counted(260),
    fields: [
      waterLook,
      cultureSigns,
      [
        'amountMl: 0.1 to 27 mL, likely 0.9 to 8.1, by 0.1, usual 2.7',
        '260 x 18,000 x 75,000 / 65e9 / 2; ten times it',
      ],
      ['brushed: yes or no', 'they were, when left empty'],
    ],
  },
  {
    rule: 'rotifer-restart',
    of: '18 L',
    ask: () => counted(200),
    fields: [['amountL: 0.1 to 18 L, likely 3 to 27, by 0.1, usual 9', 'half of it; no more than it holds']],
  },
  {
    rule: 'rotifer-trouble',
    of: 'a culture that swims slowly',
    ask: () => seen({}, 'swimming_slow'),
    fields: [cultureSigns, doneAboutIt, note],
  },
  {
    rule: 'rotifer-trouble',
    of: '18 L with 60 mg/L of ammonia',
    ask: () => {
      const { room, culture } = cultureRoom()
      const water = { totalAmmoniaNMgPerL: 60, pH: 8.2, temperatureC: 25 }
      room.fact('water_test', culture.id, morning, water)
      return room
    },
    fields: [
      cultureSigns,
      doneAboutIt,
      note,
      ['amountL: 0.1 to 18 L, likely 3 to 27, by 0.1, usual 9', 'half of it; no more than it holds'],
    ],
  },
  {
    rule: 'rotifer-rescue',
    of: '18 L that are all but dead',
    ask: crashedRoom,
    fields: [
      ['amountL: 0.1 to 18 L, likely 2.1 to 18.9, by 0.1, usual 6.3', '63 x 18 / (200 x 0.9); all of the other'],
    ],
  },
  {
    rule: 'rotifer-empty',
    of: '18 L, with nothing to begin with',
    ask: emptyRoom,
    fields: [
      [
        'animals: 1000 to 10000000000 animals, likely 110000 to 11000000, by 1000',
        '63 x 18,000; a tenth to ten times it',
      ],
    ],
  },
  {
    rule: 'rotifer-empty',
    of: '18 L, beside others at 200 a mL',
    ask: () => {
      const room = emptyRoom()
      room.count(room.culture({ startedAt: '2026-02-01T08:00:00.000Z' }), morning, [200, 200, 200])
      return room
    },
    fields: [
      ['amountL: 0.1 to 18 L, likely 2.1 to 18.9, by 0.1, usual 6.3', '63 x 18 / (200 x 0.9); all of the other'],
    ],
  },
  {
    rule: 'rotifer-backup-wanted',
    of: '18 L at 240 a mL',
    ask: () => steadyRoom().room,
    fields: [
      ['answer: one of started, later, required', 'what is asked for first'],
      ['volumeL: 0.5 to 2000 L, likely 1 to 54, by 0.5', 'a jar to three times the first; never assumed'],
      ['drawnL: 0.1 to 18 L, likely 1.767 to 15.9, by 0.1, usual 5.3', '63 x 18 / (240 x 0.9); no more than it holds'],
    ],
  },
  {
    rule: 'food-start-culture',
    of: '600,000 in 10 L, out of 18 L at 240 a mL',
    ask: () => {
      const { room, culture } = steadyRoom()
      const start = { cultureId: culture.id, volumeL: 10, animals: 600_000, onDate: formDate }
      choose(room, { kind: 'start_culture', ...start })
      return room
    },
    fields: [
      [
        'drawnL: 0.1 to 18 L, likely 0.9333 to 8.4, by 0.1, usual 2.8',
        '600,000 / (240 x 900) is 2.78: to the next mark',
      ],
    ],
  },
  {
    rule: 'food-buy-in',
    of: 'two million, to be ordered',
    ask: () => steadyRoom({ kind: 'buy_in', animals: 2e6, onDate: '2026-03-12' }).room,
    fields: [note],
  },
  {
    rule: 'food-buy-in',
    of: 'two million that come today',
    ask: () => steadyRoom({ kind: 'buy_in', animals: 2e6, onDate: formDate }).room,
    fields: [
      [
        'animals: 100000 to 10000000000 animals, likely 666700 to 6000000, by 100000, usual 2000000',
        'a third, and three times as many; nobody sends fewer than a hundred thousand',
      ],
      ['volumeL: 0.5 to 1000 L, likely 3.333 to 30, by 0.5, usual 10', '2e6 / 200 per mL'],
    ],
  },
]

const ofArtemia: readonly Form[] = [
  {
    rule: 'artemia-harvest',
    of: '2 L that were wetted yesterday',
    ask: () => hatchRoom().room,
    fields: [
      ['out: one of yes, none', 'they are, when left empty'],
      ['count: 0 to 16000 per_mL, likely 100 to 8000, 3 x 0.1 mL', 'the 200,000 of a gram in two litres, or in 25 mL'],
      ['keptMl: 10 to 20000 mL, likely 100 to 2000, by 10', 'a cup to a large jar'],
      note,
    ],
  },
  {
    rule: 'artemia-start',
    of: 'larvae in 20 L',
    ask: () => {
      const { room } = larvaeRoom({ hatchedOn: '2026-03-01' })
      room.culture({ ...{ kind: 'artemia_hatch', strain: null, volumeL: 2 }, startedAt: '2026-02-01T08:00:00.000Z' })
      return room
    },
    fields: [
      [
        'cystsG: 0.1 to 500 g, likely 0.1 to 0.9, by 0.1, usual 0.3',
        '20,000 x 2 / 0.9 x 1.2 / 200,000; a tin holds 425 to 454 g',
      ],
    ],
  },
  {
    rule: 'artemia-lot-test',
    of: 'a tin whose cysts are due',
    ask: () => {
      const { room } = larvaeRoom({ hatchedOn: '2026-02-25', larvae: 200 })
      room.culture({ ...{ kind: 'artemia_hatch', strain: null, volumeL: 2 }, startedAt: '2026-02-01T08:00:00.000Z' })
      return room
    },
    fields: [
      [
        'nauplii: 0 to 10000 per_mL, likely 1000 to 7000, 3 x 0.25 mL, required',
        '20 g a litre of 200,000-300,000 a gram',
      ],
      ['unhatched: 0 to 10000 per_mL, likely 0 to 7000, 3 x 0.25 mL', 'none, or all of them'],
    ],
  },
  {
    rule: 'artemia-decapsulate',
    of: 'a bottle of bleach',
    ask: () => {
      const { room } = hatchRoom()
      room.setting('artemia-decapsulate', { isOn: true })
      return room
    },
    fields: [
      [
        'strength: 0.04 to 0.15 share, likely 0.05 to 0.13, by 0.0025, usual 0.0525, required',
        '0.5 g of chlorine in 14 mL to a gram of cysts: weaker bleach has no room in it; from household to pool bleach',
      ],
    ],
  },
]

export const cultureForms: readonly Form[] = [...microalgae, ...ofCopepods, ...ofRotifers, ...ofArtemia]
