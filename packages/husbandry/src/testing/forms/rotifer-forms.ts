import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import type { SnapshotBuilder } from '../snapshot-builder.ts'
import { cultureSigns, doneAboutIt, type Form, note, waterLook, waterOf } from './form.ts'
import { choose, crashedRoom, cultureRoom, emptyRoom, formDate, morning, seenRoom, steadyRoom } from './form-rooms.ts'

const counted = (perMl: number, at = morning, given: Partial<SnapshotCulture> = {}): SnapshotBuilder => {
  const { room, culture } = cultureRoom(given)
  room.count(culture, at, [perMl, perMl, perMl])
  return room
}

export const rotiferForms: readonly Form[] = [
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
    ask: () => seenRoom({}, 'swimming_slow'),
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
