import { deformed, type Form, note, taken } from './form.ts'
import { chilledRoom, choose, formDate, jarRoom, larvaeRoom } from './form-rooms.ts'

const measuredOnMoving = [
  ['lengthMm: 1 to 300 mm, likely 9.727 to 26, by 1', '12 to 22 mm at 36 days, a fifth either way'],
  deformed,
  note,
] as const

export const larvaeForms: readonly Form[] = [
  {
    rule: 'food-keep-larvae',
    of: '600, of which there is food for 300',
    ask: () => {
      const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-09', larvae: 600 })
      choose(room, { kind: 'keep_larvae', subjectId: batch.id, larvae: 300 })
      return room
    },
    fields: [
      ['placed: 0 to 600 animals, likely 0 to 300, by 1', 'no more than there are; those too many are 300'],
      ['culled: 0 to 600 animals, likely 0 to 300, by 1', 'no more than there are; those too many are 300'],
      note,
    ],
  },
  {
    rule: 'larval-ammonia-test',
    of: 'clownfish in their tank at 27 C',
    ask: () => larvaeRoom({ hatchedOn: '2026-03-08' }).room,
    fields: [
      ['totalAmmoniaNMgPerL: 0 to 100 mg_per_L, likely 0 to 2, by 0.05, required', 'a card ends at 5 or so; 2 is foul'],
      ['pH: 4 to 11 pH, likely 7.6 to 8.6, by 0.1', 'sea water is 8.0 to 8.3; what lives in it makes it 7.6 to 8.6'],
      ['temperatureC: 0 to 40 degC, likely 24 to 30, by 0.1', 'what is set, three degrees either way'],
    ],
  },
  {
    rule: 'larval-ammonia-act',
    of: 'clownfish in 20 L at 30',
    ask: () => {
      const { room, tank } = larvaeRoom({ hatchedOn: '2026-03-06' })
      room.fact('water_test', tank.id, `${formDate}T06:40:00.000Z`, { totalAmmoniaNMgPerL: 0.5, pH: 8.1 })
      return room
    },
    fields: [
      ['amountL: 0.1 to 20 L, likely 3.333 to 30, by 0.1, usual 10', 'no more than it holds; half of it is asked'],
      ['salinity: 0 to 45 psu, likely 27 to 33, by 0.5', 'practical salinity to 45; what is set, three either way'],
      ['temperatureC: 0 to 40 degC, likely 24 to 30, by 0.1', 'what is set, three degrees either way'],
    ],
  },
  {
    rule: 'larval-siphon',
    of: 'clownfish on their second day',
    ask: () => larvaeRoom({ hatchedOn: '2026-03-07', larvae: 200 }).room,
    fields: [
      ['seen: one of well, hungry, poorly, required', 'the best first'],
      ['settled: one of none, some, most', 'the fewest first'],
      ['dead: 0 to 100000 animals, likely 0 to 100, by 1, required', 'a hundred dead in a day is a crash or a slip'],
      deformed,
      note,
    ],
  },
  {
    rule: 'larval-water-change',
    of: 'clownfish in 20 L at 30',
    ask: () => larvaeRoom({ hatchedOn: '2026-03-06', larvae: 200 }).room,
    fields: [
      ['seen: one of well, hungry, poorly, required', 'the best first'],
      ['settled: one of none, some, most', 'the fewest first'],
      ['dead: 0 to 100000 animals, likely 0 to 100, by 1, required', 'a hundred dead in a day is a crash or a slip'],
      deformed,
      note,
      ['amountL: 0.1 to 20 L, likely 1.333 to 12, by 0.1, usual 4', 'a fifth of it: a third, and three times as much'],
      ['salinity: 0 to 45 psu, likely 27 to 33, by 0.5', 'practical salinity to 45; what is set, three either way'],
      ['temperatureC: 0 to 40 degC, likely 24 to 30, by 0.1', 'what is set, three degrees either way'],
    ],
  },
  {
    rule: 'larval-look',
    of: 'clownfish that nobody siphons',
    ask: () => {
      const { room } = larvaeRoom({ hatchedOn: '2026-03-09', larvae: 200 })
      for (const rule of ['larval-siphon', 'larval-water-change']) room.setting(rule, { isOn: false })
      return room
    },
    fields: [
      ['seen: one of well, hungry, poorly, required', 'the best first'],
      ['settled: one of none, some, most', 'the fewest first'],
      deformed,
      note,
    ],
  },
  {
    rule: 'larval-prey-count',
    of: 'rotifers left in their tank',
    ask: () => {
      const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-07', larvae: 200 })
      room.fact('feeding', batch.id, '2026-03-09T18:30:00.000Z', { food: 'rotifers', animals: 100_000 })
      return room
    },
    fields: [
      [
        'count: 0 to 400 per_mL, likely 0 to 40, 3 x 10 mL, required',
        '40 is the densest that was tried (Ma et al. 2013); ten times that is a slip',
      ],
    ],
  },
  {
    rule: 'larval-prey-top-up',
    of: 'clownfish in 20 L, out of 18 L at 250 a mL',
    ask: () => {
      const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-07', larvae: 200 })
      const culture = room.culture({ startedAt: '2026-02-01T08:00:00.000Z' })
      room.count(culture, `${formDate}T06:30:00.000Z`, [250, 250, 250])
      room.feedLink(batch, culture)
      return room
    },
    fields: [
      ['amountMl: 10 to 9000 mL, likely 296.7 to 2670, by 10, usual 890', '10 x 20,000 / (250 x 0.9); half of 18 L'],
    ],
  },
  {
    rule: 'larval-chilled-feed',
    of: '100,000 of a jar',
    ask: chilledRoom,
    fields: [
      ['swim: one of most, few, required', 'a jar in which few swim is not fed'],
      [
        'animals: 1000 to 1000000 animals, likely 33330 to 300000, by 1000, usual 100000',
        'a third, and three times as many; to a thousand, as one counts them',
      ],
    ],
  },
  {
    rule: 'larval-artemia-feed',
    of: 'nauplii that nobody counted',
    ask: () => larvaeRoom({ hatchedOn: '2026-03-01' }).room,
    fields: [
      ['animals: 1000 to 1000000 animals, likely 6667 to 60000, by 1000, usual 20000', '1 a mL of 20 L'],
      ['leftPerMl: 0 to 50 per_mL, likely 0 to 5, by 0.1', '3 a mL at most are given: five left were not eaten at all'],
      taken,
    ],
  },
  {
    rule: 'larval-artemia-feed',
    of: 'a jar of 400 a mL',
    ask: jarRoom,
    fields: [
      ['amountMl: 0.1 to 500 mL, likely 16.67 to 150, by 0.1, usual 50', '20,000 / 400, in a syringe; ten times it'],
      ['leftPerMl: 0 to 50 per_mL, likely 0 to 5, by 0.1', '3 a mL at most are given: five left were not eaten at all'],
      taken,
    ],
  },
  {
    rule: 'larval-wean',
    of: 'clownfish of two weeks',
    ask: () => {
      const { room } = larvaeRoom({ hatchedOn: '2026-02-24', larvae: 200 })
      room.setting('larval-artemia-feed', { isOn: false })
      return room
    },
    fields: [taken],
  },
  {
    rule: 'larval-green-water',
    of: '20 L, of a bottle of 1e9 a mL',
    ask: () => {
      const { room } = larvaeRoom({ hatchedOn: '2026-03-08' })
      room.concentrate({ cellsPerMl: 1e9 })
      return room
    },
    fields: [
      ['amountMl: 0.1 to 50 mL, likely 1.333 to 12, by 0.1, usual 4', '200,000 x 20,000 / 1e9; a syringe of 50'],
    ],
  },
  {
    rule: 'larval-head-count',
    of: '200 by the book, a week old',
    ask: () => larvaeRoom({ hatchedOn: '2026-03-03', larvae: 200 }).room,
    fields: [
      ['number: 0 to 100000 animals, likely 66.67 to 200, by 10, required', 'none come of nothing; two in three die'],
      ['lengthMm: 1 to 300 mm, likely 3.808 to 9.312, by 1', '4.8 to 7.8 mm at six days, a fifth either way'],
      deformed,
      note,
    ],
  },
  {
    rule: 'larval-head-count',
    of: 'larvae that nobody numbered',
    ask: () => larvaeRoom({ hatchedOn: '2026-03-03' }).room,
    fields: [
      ['number: 0 to 100000 animals, likely 1 to 1000, by 10, required', 'a clutch of some hundreds'],
      ['lengthMm: 1 to 300 mm, likely 3.808 to 9.312, by 1', '4.8 to 7.8 mm at six days, a fifth either way'],
      deformed,
      note,
    ],
  },
  {
    rule: 'larval-head-count',
    of: '90 by the book',
    ask: () => larvaeRoom({ hatchedOn: '2026-03-03', larvae: 90 }).room,
    fields: [
      ['number: 0 to 100000 animals, likely 30 to 90, by 1, required', 'fewer than a hundred are counted one by one'],
      ['lengthMm: 1 to 300 mm, likely 3.808 to 9.312, by 1', '4.8 to 7.8 mm at six days, a fifth either way'],
      deformed,
      note,
    ],
  },
  {
    rule: 'larval-none-left',
    of: 'a tank that is empty by its book',
    ask: () => {
      const { room, batch } = larvaeRoom({ hatchedOn: '2026-03-01', larvae: 200 })
      room.fact('loss', batch.id, '2026-03-09T12:00:00.000Z', { of: 'larvae', number: 200, cause: 'other' })
      return room
    },
    fields: [
      ['number: 0 to 100000 animals, likely 0 to 50, by 1, required', '0 where there are none; few are missed'],
      note,
    ],
  },
  {
    rule: 'larval-move',
    of: '200 by the book, to one of two tanks',
    ask: () => {
      const { room } = larvaeRoom({ hatchedOn: '2026-02-01', larvae: 200 })
      room.tank({ name: 'Grow-out', kind: 'grow_out', volumeL: 420 })
      room.tank({ name: 'Grow-out 2', kind: 'grow_out', volumeL: 500 })
      return room
    },
    fields: [
      ['number: 1 to 100000 animals, likely 1 to 240, by 1, required', 'a fifth more than the book has'],
      ['tank: one of Grow-out, Grow-out 2', 'the tightest fit first'],
      ...measuredOnMoving,
    ],
  },
  {
    rule: 'larval-move',
    of: 'larvae that nobody numbered',
    ask: () => {
      const { room } = larvaeRoom({ hatchedOn: '2026-02-01' })
      room.tank({ name: 'Grow-out', kind: 'grow_out', volumeL: 420 })
      return room
    },
    fields: [
      ['number: 1 to 100000 animals, likely 1 to 600, by 1, required', 'a brood of 500 and a fifth more'],
      ['tank: one of Grow-out', 'there is no other'],
      ...measuredOnMoving,
    ],
  },
]
