import type { SnapshotBuilder } from '../snapshot-builder.ts'
import { cultureSigns, doneAboutIt, type Form, note, waterLook, waterOf } from './form.ts'
import { cultureRoom, hatchRoom, larvaeRoom, seenRoom } from './form-rooms.ts'
import { rotiferForms } from './rotifer-forms.ts'

const algae = { kind: 'microalgae', volumeL: 10, startedAt: '2026-03-03T08:00:00.000Z' } as const
const copepods = { kind: 'copepod', volumeL: 10 } as const

const naupliiCounted = (): SnapshotBuilder => {
  const { room, culture } = cultureRoom(copepods)
  for (const [of, animals] of [
    ['culture', 20],
    ['copepod_nauplii', 60],
  ] as const)
    room.fact('count', culture.id, '2026-03-09T07:10:00.000Z', { of, animals: [animals], volumeMl: 10 })
  return room
}

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
    ask: () => seenRoom(copepods, 'bad_smell'),
    fields: [cultureSigns, doneAboutIt, note],
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

export const cultureForms: readonly Form[] = [...microalgae, ...ofCopepods, ...rotiferForms, ...ofArtemia]
