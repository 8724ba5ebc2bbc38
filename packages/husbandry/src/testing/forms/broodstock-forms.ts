import { type Form, fishSigns, note } from './form.ts'
import { clutchRoom, halfHatched, pairRoom } from './form-rooms.ts'

const eggsSeen = [
  ['eggs: yes or no, required', 'whoever looked knows'],
  ['laid: one of today, yesterday', 'today when left empty'],
] as const
const clownfishEggs = [
  ...eggsSeen,
  ['number: 1 to 20000 eggs, likely 50 to 2400, by 10', '500 to 1,200 (Cheng et al. 2015): a tenth, and twice as many'],
] as const

export const broodstockForms: readonly Form[] = [
  {
    rule: 'clutch-look',
    of: '400 eggs on a nest',
    ask: () => clutchRoom({ eggs: 400, spawnedAt: '2026-03-07T10:00:00.000Z' }).room,
    fields: [
      ['eggStage: one of orange, dark, eyed, silver, out, required', 'in the order in which eggs ripen'],
      ['dead: 0 to 400 eggs, likely 0 to 80, by 1', 'no more than there are; a fifth is asked about'],
      note,
    ],
  },
  {
    rule: 'clutch-look',
    of: 'eggs on a nest that nobody counted',
    ask: () => clutchRoom({ spawnedAt: '2026-03-07T10:00:00.000Z' }).room,
    fields: [
      ['eggStage: one of orange, dark, eyed, silver, out, required', 'in the order in which eggs ripen'],
      ['dead: 0 to 5000 eggs, likely 0 to 100, by 1', 'a fifth of some 500; no clutch kept here has 5,000'],
      note,
    ],
  },
  {
    rule: 'clutch-look',
    of: 'a few eggs on a nest',
    ask: () => clutchRoom({ eggs: 60, spawnedAt: '2026-03-07T10:00:00.000Z' }).room,
    fields: [
      ['eggStage: one of orange, dark, eyed, silver, out, required', 'in the order in which eggs ripen'],
      ['dead: 0 to 60 eggs, likely 0 to 50, by 1', 'fifty are lost of many a clutch, and all of a small one'],
      note,
    ],
  },
  {
    rule: 'clutch-look',
    of: 'a brood in a mouth',
    ask: () =>
      clutchRoom({ species: 'pterapogon-kauderni', care: 'mouth', spawnedAt: '2026-03-07T10:00:00.000Z' }).room,
    fields: [['brood: one of carrying, out, gone, required', 'as on most days first'], note],
  },
  {
    rule: 'clutch-look',
    of: '1,000 eggs afloat',
    ask: () =>
      clutchRoom({
        ...{ species: 'other-3f-centropyge-sp', care: 'pelagic' },
        ...{ eggs: 1000, spawnedAt: '2026-03-09T10:00:00.000Z' },
      }).room,
    fields: [
      ['eggs: one of there, out, required', 'as on most days first'],
      ['dead: 0 to 1000 eggs, likely 0 to 200, by 1', 'no more than there are; a fifth is asked about'],
      note,
    ],
  },
  {
    rule: 'clutch-decide',
    of: 'a clutch',
    ask: () => clutchRoom({ intent: 'undecided' }).room,
    fields: [['intent: one of raise_all, raise_part, leave_with_parents, required', 'the most work first']],
  },
  {
    rule: 'clutch-morning-after',
    of: '400 eggs, in a room of two cultures',
    ask: () => {
      const { room } = clutchRoom({ eggs: 400, spawnedAt: '2026-03-02T10:00:00.000Z' })
      for (const name of ['R1', 'R2']) room.culture({ name, startedAt: '2026-02-01T08:00:00.000Z' })
      for (const culture of room.snapshot.cultures) room.count(culture, '2026-03-09T07:00:00.000Z', [200, 200, 200])
      return room
    },
    fields: [
      ['hatched: one of none, part, all, required', 'the fewest first'],
      ['larvae: 0 to 100000 animals, likely 1 to 400, by 10', 'none is said above; no more larvae than eggs'],
      ['night: one of 2026-03-09, 2026-03-08, 2026-03-07', 'last night first, three nights back'],
      ['tank: one of Nursery 1, T1, where the eggs were, new, left', 'where they were to go first'],
      ['newTankL: 1 to 2000 L, likely 5 to 200, by 1', 'larvae are reared in 5 to 200 L'],
      ['culture: one of R1, R2', 'whichever should first'],
      ['eggStage: one of orange, dark, eyed, silver', 'of what is left; nothing need be'],
      note,
    ],
  },
  {
    rule: 'clutch-morning-after',
    of: 'a brood of a mouth that nobody counted',
    ask: () => {
      const laid = { species: 'pterapogon-kauderni', care: 'mouth' as const, spawnedAt: '2026-02-16T10:00:00.000Z' }
      const { room, clutch } = clutchRoom(laid)
      room.fact('observation', clutch.id, '2026-03-09T19:30:00.000Z', { signs: ['larvae_out'] })
      return room
    },
    fields: [
      ['hatched: one of none, part, all, required', 'the fewest first'],
      [
        'larvae: 0 to 100000 animals, likely 1 to 40, by 1',
        'some 40 in a mouth (Vagelli 1999); so few are counted singly',
      ],
      ['night: one of 2026-03-09, 2026-03-08, 2026-03-07', 'last night first, three nights back'],
      ['tank: one of Nursery 1, T1, with the parents, new, left', 'where they were to go first'],
      ['newTankL: 1 to 2000 L, likely 5 to 200, by 1', 'young are reared in 5 to 200 L'],
      note,
    ],
  },
  {
    rule: 'clutch-second-night',
    of: '400 eggs',
    ask: () => halfHatched({ eggs: 400 }),
    fields: [['larvae: 0 to 100000 animals, likely 0 to 400, by 10, required', '0 where none came; no more than all']],
  },
  {
    rule: 'clutch-second-night',
    of: 'a few eggs',
    ask: () => halfHatched({ eggs: 40 }),
    fields: [['larvae: 0 to 100000 animals, likely 0 to 50, by 1, required', 'fifty are no surprise; counted singly']],
  },
  {
    rule: 'clutch-second-night',
    of: 'eggs that nobody counted, of a species that nobody knows here',
    ask: () => halfHatched({ species: 'gobiodon-unknown' }),
    fields: [['larvae: 0 to 100000 animals, likely 0 to 500, by 10, required', 'a few hundred eggs of most that lay']],
  },
  { rule: 'clutch-pull-nest', of: 'a clutch', ask: () => clutchRoom().room, fields: [note] },
  {
    rule: 'clutch-watch',
    of: 'a clutch',
    ask: () => clutchRoom().room,
    fields: [['hatching: one of none, some, most, required', 'the fewest first'], note],
  },
  {
    rule: 'pair-feed',
    of: 'a pair',
    ask: pairRoom,
    fields: [
      ['food: one of frozen, dry, fresh', 'the commonest first; what was asked when left empty'],
      fishSigns,
      note,
    ],
  },
  {
    rule: 'pair-feed',
    of: 'a pair that is looked at for eggs as it is fed',
    ask: () => {
      const room = pairRoom()
      room.setting('pair-feed', { parameters: { feedsPerDay: 1 } })
      return room
    },
    fields: [
      ...clownfishEggs,
      ['food: one of frozen, dry, fresh', 'the commonest first; what was asked when left empty'],
      fishSigns,
      note,
    ],
  },
  {
    rule: 'pair-look-for-eggs',
    of: 'cardinalfish',
    ask: () => {
      const room = pairRoom('pterapogon-kauderni')
      room.setting('pair-feed', { isOn: false })
      return room
    },
    fields: [
      ...eggsSeen,
      ['number: 1 to 20000 eggs, likely 4 to 80, by 1', 'some 40 in a mouth: a tenth, and twice as many, one by one'],
    ],
  },
  {
    rule: 'pair-look-for-eggs',
    of: 'clownfish',
    ask: () => {
      const room = pairRoom()
      room.setting('pair-feed', { isOn: false })
      return room
    },
    fields: [...clownfishEggs],
  },
  {
    rule: 'pair-look-for-eggs',
    of: 'a dragonet, whose eggs float',
    ask: () => pairRoom('other-1f-synchiropus-splendidus'),
    fields: [
      ['eggs: yes or no, required', 'whoever looked knows'],
      ['laid: one of today, yesterday', 'the last dusk when left empty'],
      ['intent: one of raise_all, raise_part, leave_with_parents', 'all when left empty'],
      ['number: 1 to 20000 eggs, likely 3 to 600, by 10', '30 to 300 of one evening: a tenth, and twice as many'],
    ],
  },
  {
    rule: 'pair-watch-new',
    of: 'a new pair',
    ask: () => pairRoom('amphiprion-ocellaris', { formedOn: '2026-03-08' }),
    fields: [['signs: any of fighting, spots_or_wounds, not_eating, gasping', 'what it is watched for first'], note],
  },
]
