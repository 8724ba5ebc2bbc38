import { SnapshotBuilder } from '../snapshot-builder.ts'
import { deformed, type Form, fishSigns, type Line, note, waterOf } from './form.ts'
import { formDate, quarantineRoom, steadyRoom, tankRoom } from './form-rooms.ts'

const group = (given: { settledOn: string; number?: number }): SnapshotBuilder => {
  const room = new SnapshotBuilder()
  room.group(given)
  return room
}

// The card of a drop test ends at 5 or so of each; nitrate is kept under 50.
const waterTest: readonly Line[] = [
  ['temperatureC: 0 to 40 degC, likely 23 to 29, by 0.1, required', 'the least that a test reads'],
  ['salinity: 0 to 45 psu, likely 32 to 38, by 0.5', 'what is set, three either way'],
  ['pH: 4 to 11 pH, likely 7.6 to 8.6, by 0.1', 'sea water is 8.0 to 8.3; what lives in it makes it 7.6 to 8.6'],
  [
    'totalAmmoniaNMgPerL: 0 to 100 mg_per_L, likely 0 to 1, by 0.05',
    'a ripe filter leaves none; no drop test reads a tenth of 100',
  ],
  ['nitriteNMgPerL: 0 to 100 mg_per_L, likely 0 to 1, by 0.05', 'a ripe filter leaves none'],
  ['nitrateNMgPerL: 0 to 1000 mg_per_L, likely 0 to 50, by 1', 'piles up: 50 as N is old water'],
]

const juveniles: readonly Form[] = [
  {
    rule: 'juvenile-feed',
    of: 'a hundred of 41 days',
    ask: () => {
      const room = new SnapshotBuilder()
      const batch = room.batch({ hatchedOn: '2026-01-28' })
      room.group({ settledOn: '2026-02-20', number: 100, fromBatchId: batch.id })
      return room
    },
    fields: [['amountG: 0.1 to 100 g, likely 0.1667 to 1.5, by 0.1, usual 0.5', '100 x 0.162 x 0.1 / 3'], fishSigns],
  },
  {
    rule: 'juvenile-feed',
    of: 'clownfish and seahorses in one tank',
    ask: () => {
      const room = new SnapshotBuilder()
      const tankId = room.tank({ kind: 'grow_out' }).id
      room.group({ settledOn: '2026-01-10', tankId, number: 40 })
      room.group({ species: 'hippocampus-erectus', settledOn: '2026-02-20', tankId, number: 60 })
      return room
    },
    fields: [
      [
        'amountG: 0.1 to 100 g, likely 0.4667 to 4.2, by 0.1, usual 1.4',
        'of the elder; a third, and three times as much',
      ],
      [
        'otherG: 0.1 to 100 g, likely 1.233 to 11.1, by 0.1, usual 3.7',
        'of the younger; a third, and three times as much',
      ],
      fishSigns,
    ],
  },
  {
    rule: 'juvenile-feed',
    of: 'fish that nobody numbered, who get a pinch',
    ask: () => group({ settledOn: '2026-02-20' }),
    fields: [fishSigns],
  },
  {
    rule: 'juvenile-count',
    of: '80 by the book',
    ask: () => group({ settledOn: '2026-02-24', number: 80 }),
    fields: [
      [
        'number: 0 to 100000 animals, likely 56 to 84, by 1, required',
        'three in ten die, one in twenty was miscounted',
      ],
      ['lengthMm: 1 to 300 mm, likely 10.19 to 27.72, by 1', '12.7 to 23.1 mm at 39 days, a fifth either way'],
      deformed,
      note,
    ],
  },
  {
    rule: 'juvenile-count',
    of: 'fish that nobody numbered',
    ask: () => group({ settledOn: '2026-02-24' }),
    fields: [
      ['number: 0 to 100000 animals, likely 1 to 2000, by 1, required', 'several broods at the most'],
      ['lengthMm: 1 to 300 mm, likely 10.19 to 27.72, by 1', '12.7 to 23.1 mm at 39 days, a fifth either way'],
      deformed,
      note,
    ],
  },
  {
    rule: 'juvenile-place',
    of: 'fish that nobody numbered',
    ask: () => group({ settledOn: '2025-11-20' }),
    fields: [['placed: 0 to 100000 animals, likely 0 to 500, by 1, required', '0 where none can be; a brood'], note],
  },
  {
    rule: 'juvenile-place',
    of: '40 by the book, of 27 mm',
    ask: () => {
      const room = group({ settledOn: '2026-01-20', number: 40 })
      room.fact('count', room.snapshot.groups[0]!.id, '2026-03-09T12:00:00.000Z', {
        of: 'juveniles',
        animals: [40],
        lengthMm: 27,
      })
      return room
    },
    fields: [
      ['placed: 0 to 100000 animals, likely 0 to 40, by 1, required', '0 where none can be; all at the most'],
      note,
    ],
  },
]

const quarantine: readonly Form[] = [
  {
    rule: 'quarantine-arrival',
    of: 'an empty tank',
    ask: () => quarantineRoom().room,
    fields: [
      ['number: 0 to 10000 animals, likely 0 to 50, by 1, required', '0 where it is empty; a box holds some fifty'],
      ['bagL: 0.05 to 1000 L, likely 0.2 to 50, by 0.1', 'a small bag to a box of them'],
      ['bagSalinity: 0 to 45 psu, likely 25 to 36, by 0.5', 'shops keep fish at 25 to 36'],
      note,
    ],
  },
  {
    rule: 'quarantine-acclimatise',
    of: 'four fish in 2 L',
    ask: () => quarantineRoom(`${formDate}T07:40:00.000Z`).room,
    fields: [['dead: 0 to 10000 animals, likely 0 to 5, by 1', 'none, or a bag of a few'], note],
  },
  {
    rule: 'quarantine-watch',
    of: 'four fish',
    ask: () => quarantineRoom('2026-03-01T07:40:00.000Z').room,
    fields: [
      ['signs: any of spots_or_wounds, gasping, not_eating, fighting', 'what quarantine is for first'],
      ['dead: 0 to 10000 animals, likely 0 to 5, by 1', 'more in a day is an outbreak or a slip'],
      ['deadOf: one of adults, juveniles', 'adults when left empty'],
      ['product: words', 'as it is written on it'],
      ['dose: words', 'as it is written'],
      ['prescribedBy: words', 'whoever did'],
      note,
    ],
  },
  {
    rule: 'quarantine-end',
    of: 'four fish, five weeks later',
    ask: () => quarantineRoom('2026-02-01T07:40:00.000Z').room,
    fields: [['answer: one of moved, stay, required', 'what is asked for first'], note],
  },
]

const tanks: readonly Form[] = [
  {
    rule: 'tank-top-up',
    of: '100 L that nobody has read',
    ask: () => tankRoom().room,
    fields: [
      ['addedL: 0.01 to 50 L, likely 0.01 to 10, by 0.1, required', 'a cup; a tenth; half of a tank is no topping up'],
    ],
  },
  {
    rule: 'tank-top-up',
    of: '100 L that read 36 in place of 35',
    ask: () => tankRoom({ salinity: 36 }).room,
    fields: [
      ['addedL: 0.01 to 50 L, likely 0.01 to 10, by 0.1, usual 2.9', '100 x (1 - 35 / 36), and a hair more by weight'],
    ],
  },
  {
    rule: 'tank-water-test',
    of: 'a tank at 35 and 26 C',
    ask: () => {
      const { room } = tankRoom()
      room.setting('tank-water-change', { isOn: false })
      return room
    },
    fields: waterTest,
  },
  {
    rule: 'tank-water-change',
    of: '100 L with a filter, tested on the same day',
    ask: () => tankRoom().room,
    on: '2026-03-12',
    fields: [
      ...waterTest,
      [
        'amountL: 0.1 to 100 L, likely 3.333 to 30, by 0.1, usual 10',
        'a tenth of it; a third, and three times as much',
      ],
      ['newSalinity: 0 to 45 psu, likely 32 to 38, by 0.5', 'what is set, three either way'],
    ],
  },
  {
    rule: 'tank-water-act',
    of: '100 L with 1 mg/L of ammonia',
    ask: () => tankRoom({ totalAmmoniaNMgPerL: 1 }).room,
    fields: [
      ['amountL: 0.1 to 100 L, likely 16.67 to 150, by 0.1, usual 50', 'half of it; no more than it holds'],
      ...waterOf(35, 26),
    ],
  },
  {
    rule: 'tank-oxygen',
    of: 'a tank that reads 4 mg/L',
    ask: () => {
      const { room, tank } = tankRoom()
      const gauge = { gaugeId: '019abc00-0000-7000-8000-000000000001', gaugeKey: 'o2', readings: 3600 }
      const at = `${formDate}T06:00:00.000Z`
      room.fact('water_reading', tank.id, at, { ...gauge, from: at, oxygenMgPerL: 4 })
      return room
    },
    fields: [['oxygenMgPerL: 0 to 30 mg_per_L, likely 3 to 9, by 0.1', 'such water holds 6.6; fish gasp under 3']],
  },
]

const theRoom: readonly Form[] = [
  { rule: 'room-equipment', of: 'the room', ask: () => tankRoom().room, fields: [note] },
  { rule: 'room-battery-air', of: 'the room', ask: () => tankRoom().room, fields: [note] },
  {
    rule: 'room-water-to-mix',
    of: '18 L of rotifers at 25',
    ask: () => steadyRoom().room,
    fields: [
      ['litres: 0.1 to 1000 L, likely 1.533 to 13.8, by 0.1, usual 4.6', '4.2 L tomorrow and a tenth more'],
      ['saltG: 0 to 50000 g, likely 39.33 to 354, by 1, usual 118', '4.6 L x 1.0157 kg x 25.1 g; two sacks of 25 kg'],
    ],
  },
]

export const tankForms: readonly Form[] = [...juveniles, ...quarantine, ...tanks, ...theRoom]
