import { describe, expect, test } from 'vitest'
import type { TaskDraft } from '../../engine/draft-day.ts'
import { clutchRoom, halfHatched, pairRoom } from '../../testing/forms/form-rooms.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { clutchDark } from './clutch-dark.ts'
import { clutchDeadEggs } from './clutch-dead-eggs.ts'
import { clutchDecide } from './clutch-decide.ts'
import { clutchLook } from './clutch-look.ts'
import { clutchMorningAfter } from './clutch-morning-after.ts'
import { clutchPullNest } from './clutch-pull-nest.ts'
import { clutchReady } from './clutch-ready.ts'
import { clutchSecondNight } from './clutch-second-night.ts'
import { clutchWatch } from './clutch-watch.ts'
import { pairFeed } from './pair-feed.ts'
import { pairLookForEggs } from './pair-look-for-eggs.ts'
import { pairConditioning, pairWatchNew, roomDayLength } from './pair-watch.ts'

// A clutch of 3 March at 27 C: 6.83 days are usual, so the 10th is its likeliest night but one.
const date = '2026-03-10'
const seahorse = { species: 'hippocampus-erectus', care: 'pouch' } as const
const cardinalfish = { species: 'pterapogon-kauderni', care: 'mouth' } as const
const dragonet = { species: 'other-1f-synchiropus-splendidus', care: 'pelagic' } as const
const lateAfterMinutes = ({ dueAt, lateAt }: TaskDraft) => (Date.parse(lateAt) - Date.parse(dueAt)) / 60_000

describe('looking at a clutch', () => {
  const looked = (given: Parameters<typeof clutchRoom>[0] = {}, parameters = {}) => {
    const made = clutchRoom({ eggs: 400, ...given })
    made.room.setting('clutch-morning-after', { isOn: false })
    made.room.setting('clutch-look', { parameters })
    return { ...made, draft: onlyDraft(made.room.drafts(date, [clutchLook])) }
  }

  test('on a nest says the night, what colours tell, and how it was worked out', () => {
    const { draft } = looked({ spawnedAt: '2026-03-07T10:00:00.000Z' })
    expect([draft.roundId, draft.content.verb, saidTitle(draft)]).toEqual([
      'morning',
      'look',
      'Look at the eggs, day 3',
    ])
    expect(saidSteps(draft)).toEqual([
      'Likeliest night of hatching: 2026-03-14, between 2026-03-13 and 2026-03-15.',
      'Colour of the clutch and of the eyes: orange, dark, dark with eyes, silver eyes.',
      'White or furred eggs are dead: write how many; the parents usually take them out.',
      'Is the male fanning? Is any of the clutch gone since yesterday?',
    ])
    expect(draft.content.looks).toEqual(['eggs_orange', 'eggs_dark', 'eggs_eyed', 'eggs_silver'])
    expect(whyLines(draft)).toEqual([
      ...['spawned', 'and 27 degC water of T1, set point', 'and 6.83 days usual time'],
      ...['equals 0 share chance that it is tonight', 'and 0.05 share chance from which tonight is said'],
    ])
  })

  test('says tonight from the chance that the room sets, and that a night is past its likeliest', () => {
    const night = (sayFromChance: number, given = {}) => saidSteps(looked(given, { sayFromChance }).draft)[0]
    expect(night(0.6)).toBe('Tonight: hatching likely (67%).')
    // On the day of the likeliest night nothing later is told.
    expect(night(0.8)).toBe('Tonight: hatching likely (67%); it is past its likeliest night.')
  })

  test('in a mouth or a pouch is at the parent, which is not to be frightened', () => {
    const [mouth, pouch] = [cardinalfish, seahorse].map(
      (kind) => looked({ ...kind, spawnedAt: '2026-03-07T10:00:00.000Z' }).draft,
    )
    expect([mouth, pouch].map(saidTitle)).toEqual(Array(2).fill('Look at the parent, day 3'))
    expect(saidSteps(mouth)).toEqual([
      expect.stringMatching(/^Likeliest night of release: 2026-04-0/),
      'Mouth still full, and no young in the water? Breathing and hiding as before?',
      'Do not chase the parent: a frightened one spits the brood.',
    ])
    expect(saidSteps(pouch).slice(1)).toEqual([
      'Pouch still full, and no young in the water? Breathing, feeding, holding on as before?',
      'Do not chase or lift the parent: a frightened one may lose the brood.',
    ])
    expect([mouth, pouch].map((draft) => draft?.content.looks)).toEqual([[], []])
    expect(whyLines(mouth)[3]).toBe('equals 0 share chance that it is tonight')
  })

  test('that is late for its kind asks whether anything lives, of eggs or of a brood', () => {
    const late = (kind: object) => {
      const { room, clutch } = clutchRoom({ ...kind, spawnedAt: '2025-12-01T10:00:00.000Z' })
      room.setting('clutch-morning-after', { isOn: false })
      room.fact('observation', clutch.id, '2026-03-09T06:00:00.000Z', { signs: ['eggs_seen'] })
      return saidSteps(onlyDraft(room.drafts(date, [clutchLook]))).at(-1)
    }
    expect([late({}), late(cardinalfish)]).toEqual([
      'It is late for its kind: look closely whether the eggs are alive.',
      'It is late for its kind: look closely whether anything is carried still.',
    ])
  })

  test('of floating eggs is not asked on the day on which they were collected', () => {
    const { room, pair } = clutchRoom({
      species: 'other-3f-centropyge-sp',
      care: 'pelagic',
      spawnedAt: '2026-03-09T19:00:00.000Z',
    })
    const asked = () => room.drafts(date, [clutchLook]).drafts.length
    expect(asked()).toBe(1)
    room.fact('observation', pair.id, `${date}T07:00:00.000Z`, { signs: ['no_eggs'] })
    expect(asked()).toBe(1)
    room.fact('observation', pair.id, `${date}T07:05:00.000Z`, { signs: ['eggs_seen'] })
    expect(asked()).toBe(0)
  })

  test('writes down what was seen: carried, gone, out; and the dead as whole eggs', () => {
    const facts = (kind: object, values: object) =>
      signOff(clutchLook, looked(kind).draft, { ...values }).facts.map(({ data }) => data)
    expect(facts(cardinalfish, { brood: 'carrying', note: 'hides' })).toEqual([{ signs: ['eggs_seen'], note: 'hides' }])
    expect(facts(cardinalfish, { brood: 'gone', note: 'thin' })).toEqual([
      { signs: ['no_eggs'], note: 'Not carrying any more. thin' },
    ])
    expect(facts({}, { eggStage: 'eyed', dead: 11.6 })).toEqual([
      { signs: ['eggs_seen'], eggStage: 'eyed' },
      { number: 12, of: 'eggs' },
    ])
    expect(facts({}, { eggStage: 'out', dead: 0 })).toEqual([{ signs: ['larvae_out'] }])
    expect(facts({ species: 'other-3f-centropyge-sp', care: 'pelagic' }, { eggs: 'out' })).toEqual([
      { signs: ['larvae_out'] },
    ])
  })
})

describe('dead eggs', () => {
  const asked = (losses: [at: string, number: number][], given: Parameters<typeof clutchRoom>[0] = { eggs: 400 }) => {
    const { room, clutch } = clutchRoom(given)
    for (const [at, number] of losses) room.fact('loss', clutch.id, at, { number, of: 'eggs' })
    return { room, clutch, drafts: () => room.drafts(date, [clutchDeadEggs]).drafts }
  }
  const [yesterday, today] = ['2026-03-09T12:00:00.000Z', '2026-03-10T06:00:00.000Z']

  test('are a task from a twentieth of the clutch on, by what was written down since yesterday: 15 + 5 of 400', () => {
    const both = asked([
      [yesterday, 15],
      [today, 5],
    ])
    const draft = both.drafts()[0]!
    expect([draft.roundId, saidTitle(draft)]).toEqual(['evening', 'Take the dead eggs out'])
    expect(saidSteps(draft)).toEqual([
      'White or furred ones only, with a thin siphon or a blunt pipette, from the edge inwards.',
      'While the parents guard: quick and gentle, or leave it to them.',
    ])
    expect(whyLines(draft)).toEqual([
      ...['15 eggs dead', 'plus 5 eggs dead', 'divided by 400 eggs of', 'and 0.05 share of the clutch or more'],
    ])
    expect(asked([[today, 19]]).drafts()).toEqual([])
    // A day and more before this one is another matter.
    expect(asked([['2026-03-08T23:59:00.000Z', 50]]).drafts()).toEqual([])
    expect(asked([['2026-03-09T00:00:00.000Z', 50]]).drafts()).toHaveLength(1)
  })

  test('are not asked about once they were taken out, until more are dead', () => {
    const { room, clutch, drafts } = asked([[today, 30]])
    room.fact('care', clutch.id, '2026-03-10T12:00:00.000Z', { act: 'remove_dead_eggs' })
    expect(drafts()).toEqual([])
    room.fact('loss', clutch.id, '2026-03-10T13:00:00.000Z', { number: 20, of: 'eggs' })
    expect(whyLines(drafts()[0])[0]).toBe('20 eggs dead')
  })

  test('are a task on a nest alone, of a clutch that somebody counted and that has not hatched', () => {
    expect(asked([[today, 50]], {}).drafts()).toEqual([])
    expect(asked([[today, 50]], { ...cardinalfish, eggs: 400 }).drafts()).toEqual([])
    const { room, clutch, drafts } = asked([[today, 50]])
    room.fact('hatch', clutch.id, '2026-03-10T06:30:00.000Z', { hatchedOn: '2026-03-09' })
    expect(drafts()).toEqual([])
  })
})

describe('before the night', () => {
  test('whoever decides is told how soon it may come, and what it takes', () => {
    const told = (kind: object, on: string) => {
      const { room } = clutchRoom({ eggs: 400, intent: 'undecided', ...kind })
      return onlyDraft(room.drafts(on, [clutchDecide]))
    }
    const draft = told({}, '2026-03-07')
    expect(saidTitle(draft)).toBe('Decide: raise all, part or none?')
    expect(saidSteps(draft)).toEqual([
      ...['It may hatch within 3 days.', 'Nursery 1 is empty: 20 L.'],
      'There is no grow-out tank: those that settle will want one in some weeks.',
      'Raised ones need live food several times a day for weeks: the page of each culture says what it can give.',
    ])
    expect(whyLines(draft).slice(-4)).toEqual([
      expect.stringMatching(/^equals 0\.\d+ share chance of 2026-03-07 to 2026-03-10, together$/),
      ...['and 400 eggs in it', 'and 3 days ahead', 'and 0.1 share chance or more'],
    ])
    expect(draft.content.fields[0]?.label).toBe('This clutch')
    const brood = told({ ...seahorse, spawnedAt: '2026-02-20T10:00:00.000Z' }, date)
    expect([saidSteps(brood)[0], brood.content.fields[0]?.label]).toEqual([
      ...['It may be released within 3 days.', 'This brood'],
    ])
    expect(signOff(clutchDecide, draft, {}).facts).toEqual([])
  })

  test('a tank is readied with the food of the first morning: rotifers for 20 L at 10 a mL', () => {
    const { room } = clutchRoom({ eggs: 400 })
    const draft = onlyDraft(room.drafts(date, [clutchReady]))
    expect(draft.roundId).toBe('morning')
    expect(saidSteps(draft)).toEqual([
      'Nursery 1 clean, filled to 20 L with the parents’ own water or matched to it, gentle air, warm.',
      'Rotifers for the first morning: 200000 animals, 10 per_mL of its water, counted and small enough.',
      'Something to cover the tank with: no lamp, no window, no glow of a pump.',
      'A clean carrier for the nest, an air stone to stand in for the male, a dim red torch.',
    ])
    expect(whyLines(draft).slice(-3)).toEqual([
      expect.stringMatching(/^equals 0\.\d+ share chance of 2026-03-10 to 2026-03-11, together$/),
      ...['and 0.2 share chance or more', 'and 1 days ahead'],
    ])
  })

  test('for young that a pouch lets go it has something to hold on to, and nauplii', () => {
    const { room } = clutchRoom({ ...seahorse, spawnedAt: '2026-02-20T10:00:00.000Z' })
    expect(saidSteps(onlyDraft(room.drafts(date, [clutchReady]))).slice(1)).toEqual([
      'First food ready for the morning: newly hatched Artemia nauplii.',
      'Something thin to hold on to later: netting or threads, weighted down.',
      'A jug to carry the young in water, never a dry net; a dim red torch.',
    ])
  })

  test('for young that a mouth lets go it has neither, nor a cover', () => {
    const { room } = clutchRoom({ ...cardinalfish, spawnedAt: '2026-02-09T10:00:00.000Z' })
    // No single night of a release is as likely as one of a nest.
    room.setting('clutch-ready', { parameters: { fromChance: 0.05 } })
    expect(saidSteps(onlyDraft(room.drafts(date, [clutchReady]))).slice(1)).toEqual([
      'First food ready for the morning: newly hatched Artemia nauplii.',
      'A jug to carry the young in water, never a dry net; a dim red torch.',
    ])
  })

  test('for eggs that float it is filled now, and food is ready for a day later', () => {
    const { room } = clutchRoom({ ...dragonet, spawnedAt: '2026-03-09T19:00:00.000Z' })
    expect(saidSteps(onlyDraft(room.drafts(date, [clutchReady]))).slice(1)).toEqual([
      'They live on their yolk for a day or two after the hatch. First food ready for then: copepod nauplii.',
      'Now the eggs into it from the cup, in water, never in a net. White and sunk ones stay behind: they foul it.',
    ])
  })

  test('the nest is pulled into its tank, or into one that is still to be found, and a note is kept', () => {
    const { room, clutch } = clutchRoom({ eggs: 400 })
    const draft = onlyDraft(room.drafts(date, [clutchPullNest]))
    expect([saidSteps(draft)[0], draft.content.looks]).toEqual([
      'Into Nursery 1, under water all the way: eggs never see air.',
      ['eggs_silver'],
    ])
    expect(whyLines(draft).slice(-2)).toEqual([
      ...['and 0.5 share chance or more', 'and 2 hours before dark at the latest, where a round allows it'],
    ])
    expect(signOff(clutchPullNest, draft, { note: 'silver' }).facts).toEqual([
      { kind: 'care', subjectId: clutch.id, data: { act: 'pull_nest', note: 'silver' } },
    ])
    room.snapshot.tanks = room.snapshot.tanks.filter(({ kind }) => kind !== 'larval')
    expect(saidSteps(onlyDraft(room.drafts(date, [clutchPullNest])))[0]).toMatch(/^Into an empty larval tank,/)
  })

  test('is pulled in the last round that leaves two hours before dark, else in the first of the afternoon', () => {
    const pulledIn = (at: string) => {
      const { room } = clutchRoom({ eggs: 400 })
      const [first, , last] = room.snapshot.room.rounds
      room.snapshot.room.rounds = [first!, { id: 'second', name: 'Second', at }, last!]
      return onlyDraft(room.drafts(date, [clutchPullNest])).roundId
    }
    // Lights go off at 19:00 and the last round is at 18:30; eleven is eight hours before dark.
    expect(['10:59', '11:00', '17:00', '17:01'].map(pulledIn)).toEqual(['evening', 'second', 'second', 'second'])
    const withBoth = clutchRoom({ eggs: 400 }).room
    withBoth.snapshot.room.rounds = ['07:00', '16:00', '17:00', '18:30'].map((at) => ({ id: at, name: at, at }))
    expect(onlyDraft(withBoth.drafts(date, [clutchPullNest])).roundId).toBe('17:00')
    withBoth.snapshot.room.rounds = [{ id: 'once', name: 'Once', at: '07:00' }]
    expect(onlyDraft(withBoth.drafts(date, [clutchPullNest])).roundId).toBe('once')
  })

  test('where the last round is after dark it may be pulled until the day ends', () => {
    const { room } = clutchRoom({ eggs: 400 })
    room.snapshot.room.rounds = [{ id: 'night', name: 'Night', at: '20:00' }]
    expect(onlyDraft(room.drafts(date, [clutchPullNest])).closesAt).toBe('2026-03-11T00:00:00.000Z')
  })

  test('it is kept dark on a likely night, and on any that it stands pulled, once', () => {
    const dark = (act?: 'pull_nest' | 'darken', on = date) => {
      const { room, clutch } = clutchRoom({ eggs: 400 })
      if (act) room.fact('care', clutch.id, `${on}T06:00:00.000Z`, { act })
      return room.drafts(on, [clutchDark]).drafts
    }
    const [draft] = dark()
    expect([draft?.roundId, saidTitle(draft)]).toEqual(['evening', 'Keep it dark from lights off'])
    expect(whyLines(draft).at(-1)).toBe('and 0.2 share chance or more')
    expect(dark('darken')).toEqual([])
    expect([dark(undefined, '2026-03-06'), dark('pull_nest', '2026-03-06')].map(({ length }) => length)).toEqual([0, 1])
  })

  test('a nest that was moved back is kept dark no more, until it is pulled again', () => {
    const { room, clutch } = clutchRoom({ eggs: 400 })
    const unlikely = '2026-03-06'
    const asked = () => room.drafts(unlikely, [clutchDark]).drafts.length
    const done = (act: 'pull_nest' | 'move_nest_back', at: string) => {
      room.fact('care', clutch.id, `${unlikely}T${at}:00.000Z`, { act })
      return asked()
    }
    expect([asked(), done('pull_nest', '08:00'), done('move_nest_back', '09:00'), done('pull_nest', '10:00')]).toEqual([
      ...[0, 1, 0, 1],
    ])
  })

  test('it is watched from lights off, by its kind’s own hours, until somebody has looked in the dark', () => {
    const { room, clutch } = clutchRoom({ eggs: 400 })
    const asked = () => room.drafts(date, [clutchWatch]).drafts
    const [draft] = asked()
    expect(saidSteps(draft)).toEqual([
      'Between 0 and 3 hours after lights off, with a dim red torch, for a minute.',
      'Larvae at the surface? More air on the eggs helps the rest out.',
      'Nothing yet is no reason to stir: look once more, then leave them till morning.',
    ])
    expect([lateAfterMinutes(draft!), whyLines(draft).at(-1)]).toEqual([180, 'and 0.5 share chance or more'])
    const seen = (values: object) => signOff(clutchWatch, draft!, { ...values }).facts[0]?.data
    expect(seen({ hatching: 'none' })).toEqual({ signs: ['eggs_seen'], note: 'None out.' })
    expect(seen({ hatching: 'most', note: 'at ten' })).toEqual({ signs: ['larvae_out'], note: 'Most are out. at ten' })
    room.fact('observation', clutch.id, '2026-03-10T18:59:00.000Z', { signs: ['eggs_seen'] })
    expect(asked()).toHaveLength(1)
    room.fact('observation', clutch.id, '2026-03-10T19:00:00.000Z', { signs: ['eggs_seen'] })
    expect(asked()).toEqual([])
  })
})

describe('the morning after', () => {
  const asked = (given: Parameters<typeof clutchRoom>[0], on = '2026-03-11') =>
    onlyDraft(clutchRoom(given).room.drafts(on, [clutchMorningAfter]))
  const field = (draft: TaskDraft, name: string) => draft.content.fields.find((each) => each.name === name)

  test('of a nest says where to look, how to count, and that food is waiting', () => {
    const draft = asked({ eggs: 400 })
    expect([saidTitle(draft), lateAfterMinutes(draft)]).toEqual(['What has hatched?', 60])
    expect(saidSteps(draft)).toEqual([
      'Before the lights come on: larvae at the surface, and eggs left on the nest?',
      'About how many: count a tenth of the surface, or the eggs that are left.',
      'Take the nest out, or leave it with air for the second night when a good part is still on it.',
      'Lights on low; first food this morning: it is on the list as soon as this is written down.',
    ])
    expect(whyLines(draft).at(-1)).toBe('and 0.1 share chance or more')
    const labels = draft.content.fields.map(({ label }) => label)
    expect(labels.slice(0, 2)).toEqual(['Hatched', 'About how many larvae'])
    expect(field(draft, 'tank')?.help).toBe('Nursery 1 when left empty.')
    expect(field(draft, 'night')?.help).toBe('Last night when left empty. The larvae are fed by their age.')
  })

  test('is not asked once a look of the day saw eggs or their colour, nor once the hatch is written down', () => {
    const after = (written: (made: ReturnType<typeof clutchRoom>) => void) => {
      const made = clutchRoom({ eggs: 400 })
      written(made)
      return made.room.drafts('2026-03-11', [clutchMorningAfter]).drafts.length
    }
    const at = '2026-03-11T06:30:00.000Z'
    expect(after(() => undefined)).toBe(1)
    expect(after(({ room, clutch }) => room.fact('observation', clutch.id, at, { signs: ['eggs_seen'] }))).toBe(0)
    expect(after(({ room, clutch }) => room.fact('observation', clutch.id, at, { eggStage: 'dark' }))).toBe(0)
    expect(after(({ room, clutch }) => room.fact('observation', clutch.id, at, { note: 'lid open' }))).toBe(1)
    const hatch = { hatchedOn: '2026-03-10' }
    expect(after(({ room, clutch }) => room.fact('hatch', clutch.id, at, hatch))).toBe(0)
  })

  test('of a clutch that is left with its parents moves nothing and asks for no tank', () => {
    const { room } = clutchRoom({ eggs: 400 })
    room.snapshot.clutches[0]!.intent = 'leave_with_parents'
    const draft = onlyDraft(room.drafts('2026-03-11', [clutchMorningAfter]))
    expect(saidSteps(draft)).toEqual([
      'Before the lights come on: larvae at the surface, and eggs left on the nest?',
      'They are left with their parents: nothing to move.',
    ])
    expect(draft.content.fields.map(({ name }) => name)).toEqual(['hatched', 'larvae', 'night', 'eggStage', 'note'])
  })

  test('of floating eggs siphons the dead off, and has no food on the list before the next day', () => {
    const laid = { ...dragonet, spawnedAt: '2026-03-08T19:00:00.000Z' }
    const draft = asked(laid, date)
    expect(saidSteps(draft)).toEqual([
      'Before the lights come on: larvae at the surface, and eggs still afloat?',
      'About how many: count a tenth of the surface, or the eggs that are left.',
      'Siphon off eggs that sank or turned white: they are dead. Clear ones that float may hatch next night.',
      'They live on their yolk for another day. Food from tomorrow on, as small as you can get it: copepod nauplii or ciliates, and the smallest rotifers.',
    ])
    expect(field(draft, 'eggStage')).toBeUndefined()
    const { room } = clutchRoom(laid)
    const copepods = (name: string) =>
      room.culture({ name, kind: 'copepod', strain: null, startedAt: '2026-02-01T08:00:00.000Z' })
    copepods('C1')
    expect(saidSteps(onlyDraft(room.drafts(date, [clutchMorningAfter]))).at(-1)).toBe(
      'They live on their yolk for another day. Nauplii of C1 are on the list for them from tomorrow on.',
    )
    copepods('C2')
    expect(saidSteps(onlyDraft(room.drafts(date, [clutchMorningAfter]))).at(-1)).toBe(
      'They live on their yolk for another day. Nauplii of C1 and C2 are on the list for them from tomorrow on.',
    )
  })

  test('asks which culture feeds them where there are two, and takes the only one without a word', () => {
    const { room } = clutchRoom({ eggs: 400 })
    const one = room.culture({ name: 'R1', startedAt: '2026-02-01T08:00:00.000Z' })
    const asking = () => onlyDraft(room.drafts('2026-03-11', [clutchMorningAfter]))
    expect(field(asking(), 'culture')).toBeUndefined()
    expect(signOff(clutchMorningAfter, asking(), { hatched: 'all' }).creations).toMatchObject([
      { cultureIds: [one.id] },
    ])
    room.culture({ name: 'R2', startedAt: '2026-02-01T08:00:00.000Z' })
    expect(field(asking(), 'culture')).toMatchObject({ label: 'Fed from', help: 'R1 when left empty.' })
  })

  test('of eggs laid as the lights went off has no night before them', () => {
    const { room, clutch } = clutchRoom({ spawnedAt: '2026-03-08T19:00:00.000Z' })
    room.fact('observation', clutch.id, '2026-03-10T20:00:00.000Z', { signs: ['larvae_out'] })
    const nights = field(onlyDraft(room.drafts('2026-03-11', [clutchMorningAfter])), 'night')
    expect(nights?.type === 'choice' && nights.choices.map(({ label }) => label)).toEqual([
      ...['last night (from 10 Mar)', 'the night before (from 9 Mar)'],
    ])
  })

  test('writes a hatch without a batch where they are left with their parents, and one with it elsewhere', () => {
    const draft = asked({ eggs: 400 })
    const signed = (values: object) => signOff(clutchMorningAfter, draft, { ...values })
    const left = signed({ hatched: 'part', tank: 'left', larvae: 99.7, note: 'few' })
    expect(left.creations).toBeUndefined()
    expect(left.facts.map(({ data }) => data)).toEqual([
      { hatchedOn: '2026-03-10', larvae: 100 },
      { signs: ['eggs_seen'], note: 'few' },
    ])
    expect(signed({ hatched: 'all', eggStage: 'silver' }).facts.map(({ data }) => data)).toEqual([
      { signs: ['no_eggs'] },
    ])
    expect(signed({ hatched: 'part', larvae: 120.4 }).creations).toMatchObject([
      { larvae: 120, hatchedOn: '2026-03-10' },
    ])
    // A task that was kept before there was always a tank makes no batch.
    const kept = {
      ...draft,
      context: { hatchedOn: '2026-03-10', tankId: null, species: 'amphiprion-ocellaris', raises: true },
    }
    expect(signOff(clutchMorningAfter, kept, { hatched: 'all' }).creations).toBeUndefined()
  })

  test('asks for the litres of a tank that is not on the list only where larvae go into it', () => {
    const missing = (values: object) => clutchMorningAfter.check?.({ ...values })?.length
    expect(missing({ hatched: 'part', tank: 'new' })).toBe(1)
    expect(missing({ hatched: 'none', tank: 'new' })).toBe(0)
    expect(missing({ tank: 'new' })).toBe(0)
    expect(missing({ hatched: 'all', tank: 'left' })).toBe(0)
  })
})

describe('the second night', () => {
  test('of a nest ends with the nest taken out; of a brood with a parent left in peace', () => {
    const nest = onlyDraft(halfHatched({ eggs: 400 }).drafts(date, [clutchSecondNight]))
    expect([nest.roundId, saidTitle(nest)]).toEqual(['morning', 'What came in the second night?'])
    expect(saidSteps(nest)).toEqual([
      'Larvae that came tonight join the others in the same tank.',
      'Take the nest out now: what is left will foul the water.',
    ])
    expect(whyLines(nest)).toEqual([
      ...['hatched the night of 2026-03-08', 'and eggs left', 'and 1 nights more', 'and to be raised raise all'],
    ])
    const brood = onlyDraft(halfHatched(cardinalfish).drafts(date, [clutchSecondNight]))
    expect(saidSteps(brood)).toEqual([
      'Young that came tonight join the others in the same tank.',
      'Leave a parent that still carries in peace: it releases the rest by itself.',
    ])
    expect(whyLines(brood).slice(0, 2)).toEqual(['came the night of 2026-03-08', 'and still carrying'])
    const afloat = onlyDraft(halfHatched(dragonet).drafts(date, [clutchSecondNight]))
    expect(saidSteps(afloat)[1]).toBe('Siphon off what is left: it will foul the water.')
  })

  test('is asked about for as many nights as the room waits, and of no clutch that its parents keep', () => {
    const asked = (on: string, { nights = 1, intent = 'raise_all' as 'raise_all' | 'leave_with_parents' } = {}) => {
      const room = halfHatched({ eggs: 400 })
      room.setting('clutch-second-night', { parameters: { nights } })
      room.snapshot.clutches[0]!.intent = intent
      return room.drafts(on, [clutchSecondNight]).drafts.length
    }
    // They hatched in the night of the 8th; that of the 9th is the second.
    expect([asked('2026-03-09'), asked('2026-03-10'), asked('2026-03-11')]).toEqual([0, 1, 0])
    expect([asked('2026-03-11', { nights: 2 }), asked('2026-03-12', { nights: 2 })]).toEqual([1, 0])
    expect(asked(date, { intent: 'leave_with_parents' })).toBe(0)
  })

  test('is not asked about once somebody has looked that morning, nor while the last look saw nothing left', () => {
    const asked = (at: string, sign: 'eggs_seen' | 'larvae_out') => {
      const room = halfHatched({ eggs: 400 })
      room.fact('observation', room.snapshot.clutches[0]!.id, at, { signs: [sign] })
      return room.drafts(date, [clutchSecondNight]).drafts.length
    }
    expect(asked('2026-03-09T18:00:00.000Z', 'eggs_seen')).toBe(1)
    expect(asked('2026-03-09T18:00:00.000Z', 'larvae_out')).toBe(0)
    expect(asked('2026-03-10T06:00:00.000Z', 'eggs_seen')).toBe(0)
  })

  test('in which none came is written down as the end of it', () => {
    const draft = onlyDraft(halfHatched({ eggs: 400 }).drafts(date, [clutchSecondNight]))
    expect(signOff(clutchSecondNight, draft, { larvae: 0 }).facts.map(({ data }) => data)).toEqual([
      { signs: ['no_eggs'] },
    ])
    expect(signOff(clutchSecondNight, draft, { larvae: 7.6 }).facts[0]?.data).toEqual({
      hatchedOn: '2026-03-09',
      larvae: 8,
    })
  })
})

describe('pairs', () => {
  test('are fed a little at a time, frozen food thawed, and looked over', () => {
    const [frozen, dry] = pairRoom().drafts(date, [pairFeed]).drafts
    const little = 'A little at a time, as much as they clear in 2 minutes.'
    const over = 'Both eat? Look for torn fins, spots, hard breathing. Take out what is left.'
    expect(saidSteps(frozen)).toEqual([little, 'Thaw it in tank water and pour the juice away.', over])
    expect(saidSteps(dry)).toEqual([
      'Shine along the nest site: the pot, and at what is near it.',
      'No hands in the tank: a torch and a minute of watching do.',
      ...[little, over],
    ])
    expect(whyLines(frozen)).toEqual(['2 feeds a day', 'and 2 minutes until it is cleared'])
    expect(whyLines(dry)).toEqual([...whyLines(frozen), 'and spawnings here so far none'])
  })

  test('of seahorses are fed slowly, and looked over for bubbles', () => {
    const [first] = pairRoom('hippocampus-erectus').drafts(date, [pairFeed]).drafts
    expect(saidSteps(first).slice(1)).toEqual([
      'A little at a time, let drift past all of them: they pick it up one by one.',
      'What still lies there after half an hour was too much: siphon it.',
      'Both eat? Look for bubbles under the skin, a swollen pouch or tail that is not a brood, pale spots, hard breathing.',
    ])
    expect(whyLines(first)).toEqual(['2 feeds a day'])
  })

  test('of a species that nobody knows here are fed and looked over as others are', () => {
    const [first] = pairRoom('gobiodon-unknown').drafts(date, [pairFeed]).drafts
    expect(saidSteps(first).at(-1)).toBe('Both eat? Look for torn fins, spots, hard breathing. Take out what is left.')
  })

  test('that get the same each time get frozen food, and a resting pair is said to rest', () => {
    const room = pairRoom()
    room.setting('pair-feed', { parameters: { varied: false } })
    expect(room.drafts(date, [pairFeed]).drafts.map((draft) => saidTitle(draft).split(',')[0])).toEqual([
      ...['Feed frozen food', 'Feed frozen food'],
    ])
    room.snapshot.pairs[0]!.isResting = true
    expect(whyLines(onlyDraft(room.drafts(date, [pairFeed]))).slice(0, 2)).toEqual([
      ...['resting', 'and 1 feeds a day while resting'],
    ])
  })

  test('leave nothing behind of a feed at which nothing was seen, and a note by itself is kept', () => {
    const [draft] = pairRoom().drafts(date, [pairFeed]).drafts
    const facts = (values: object) => signOff(pairFeed, draft!, { ...values }).facts.map(({ data }) => data)
    expect(facts({ food: 'dry' })).toEqual([{ food: 'dry' }])
    expect(facts({ note: 'shy' })).toEqual([{ food: 'frozen' }, { signs: [], note: 'shy' }])
    expect(facts({ signs: ['gasping'], note: 'shy' })).toEqual([
      { food: 'frozen' },
      { signs: ['gasping'], note: 'shy' },
    ])
    // A task of before eggs were looked for with a feed.
    const kept = { ...draft!, context: { food: 'dry' } }
    expect(signOff(pairFeed, kept, { eggs: true }).creations).toBeUndefined()
  })

  test('are looked at for eggs where they lay them, and told where floating ones go', () => {
    const asked = (species: string) => {
      const room = pairRoom(species)
      room.setting('pair-feed', { isOn: false })
      return onlyDraft(room.drafts(date, [pairLookForEggs]))
    }
    expect(saidSteps(asked('pterapogon-kauderni'))[0]).toBe(
      'A full throat and a male that does not eat mean eggs in his mouth.',
    )
    expect(saidSteps(asked('hippocampus-erectus'))[0]).toBe('A swollen, closed pouch means eggs.')
    expect(asked('pterapogon-kauderni').content.fields[0]?.label).toBe('Carrying eggs?')
    const afloat = asked(dragonet.species)
    expect(saidSteps(afloat)[1]).toBe(
      'Take them in a cup, in water, before a pump has them: they go into T2, which the list says how to ready once they are found.',
    )
    expect(afloat.content.fields.map(({ label, help }) => [label, help])).toEqual([
      ['Eggs?', null],
      ['Laid', 'At the last dusk when left empty.'],
      ['Collected', 'All of them when left empty.'],
      ['About how many', null],
    ])
    const clownfish = asked('amphiprion-ocellaris')
    expect([afloat, clownfish].map(saidTitle)).toEqual(['Look for eggs', 'Look for eggs'])
    expect(clownfish.content.fields[1]?.help).toBe('Today when left empty.')
    expect(whyLines(clownfish)).toEqual([
      'spawnings here so far none',
      'and 3 days from one look to the next, outside the window',
    ])
  })

  test('that have spawned before are told when the next eggs are likely, and why', () => {
    const room = pairRoom()
    const [pair] = room.snapshot.pairs
    for (const month of ['01-25', '02-08', '02-22']) {
      const clutch = room.clutch(pair!, { spawnedAt: `2026-${month}T10:00:00.000Z` })
      const hatchedOn = `2026-${month.slice(0, 2)}-28`
      room.fact('hatch', clutch.id, `${hatchedOn}T20:00:00.000Z`, { hatchedOn })
    }
    const withFeed = room.drafts('2026-03-07', [pairFeed]).drafts[1]
    // Every fourteen days: the 8th, and a window of some days about it.
    const next = /^Next spawning likeliest 2026-03-0[78], between 2026-03-0\d and 2026-03-1\d\.$/
    expect(saidSteps(withFeed)[1]).toMatch(next)
    expect(whyLines(withFeed).slice(-2)).toEqual([
      ...['and last spawned', expect.stringMatching(/^and 14\.\d days usual interval, moved by 2 of this pair$/)],
    ])
    room.setting('pair-feed', { isOn: false })
    const alone = onlyDraft(room.drafts('2026-03-07', [pairLookForEggs]))
    expect(saidSteps(alone)[1]).toMatch(next)
    expect(whyLines(alone)[0]).toBe('last spawned')
    pair!.nestSite = ''
    expect(saidSteps(onlyDraft(room.drafts('2026-03-07', [pairLookForEggs])))[0]).toBe(
      'Shine along the nest site, and at what is near it.',
    )
  })

  test('in which eggs were found have a clutch of whole eggs, laid by day; kept tasks that say no day are of the moment', () => {
    const room = pairRoom()
    room.setting('pair-feed', { isOn: false })
    const draft = onlyDraft(room.drafts(date, [pairLookForEggs]))
    const laid = (values: object, context: object = draft.context as object) =>
      signOff(pairLookForEggs, { ...draft, context }, { eggs: true, ...values }, `${date}T13:00:00.000Z`).creations?.[0]
    expect(laid({ number: 299.6 })).toMatchObject({ eggs: 300, spawnedAt: `${date}T12:00:00.000Z` })
    expect(laid({ laid: 'yesterday' })).not.toHaveProperty('eggs')
    expect(laid({ intent: 'raise_part' })).not.toHaveProperty('intent')
    expect(laid({}, {})).toMatchObject({ spawnedAt: `${date}T13:00:00.000Z` })
    expect(laid({ laid: 'yesterday' }, {})).toMatchObject({ spawnedAt: '2026-03-09T13:00:00.000Z' })
    const afloat = onlyDraft(pairRoom(dragonet.species).drafts(date, [pairLookForEggs]))
    const found = signOff(pairLookForEggs, afloat, { eggs: true, intent: 'raise_part' }, `${date}T07:05:00.000Z`)
    expect(found.creations).toMatchObject([{ intent: 'raise_part', spawnedAt: '2026-03-09T19:00:00.000Z' }])
    expect(
      signOff(pairLookForEggs, afloat, { eggs: true, laid: 'yesterday' }, `${date}T20:00:00.000Z`).creations,
    ).toMatchObject([{ spawnedAt: '2026-03-09T19:00:00.000Z' }])
  })

  test('that are new are watched from the day on which they were put together, for fourteen days', () => {
    const asked = (formedOn: string | null, sign?: 'all_well' | 'fighting' | 'gasping') => {
      const room = pairRoom('amphiprion-ocellaris', { formedOn })
      if (sign) room.fact('observation', room.snapshot.pairs[0]!.id, `${date}T07:00:00.000Z`, { signs: [sign] })
      return room.drafts(date, [pairWatchNew]).drafts
    }
    expect([null, '2026-03-11', '2026-03-10', '2026-02-25', '2026-02-24'].map((on) => asked(on).length)).toEqual([
      ...[0, 0, 1, 1, 0],
    ])
    expect((['all_well', 'fighting', 'gasping'] as const).map((sign) => asked('2026-03-08', sign).length)).toEqual([
      0, 0, 1,
    ])
    const [draft] = asked('2026-03-08')
    expect([draft?.roundId, saidTitle(draft)]).toEqual(['evening', 'Watch for fighting, day 2'])
    expect(whyLines(draft)).toEqual(['together since 2026-03-08', 'and 14 days from its forming'])
    expect(draft!.content.cautions.join(' ')).toMatch(/follow local rules/)
    expect(signOff(pairWatchNew, draft!, { note: 'calm' }).facts[0]?.data).toEqual({
      signs: ['all_well'],
      note: 'calm',
    })
  })

  test('that are conditioned get fresh food once a day, not while they rest or brood', () => {
    const room = pairRoom()
    room.setting('pair-conditioning', { isOn: true })
    const asked = () => room.drafts(date, [pairConditioning]).drafts
    const [draft] = asked()
    expect([draft?.roundId, saidTitle(draft)]).toEqual(['midday', 'Feed fresh food'])
    expect(whyLines(draft)).toEqual(['not brooding', 'and 1 feeds more a day'])
    const [pair] = room.snapshot.pairs
    room.fact('feeding', pair!.id, `${date}T07:00:00.000Z`, { food: 'frozen' })
    expect(asked()).toHaveLength(1)
    room.fact('feeding', pair!.id, `${date}T07:10:00.000Z`, { food: 'fresh' })
    expect(asked()).toEqual([])
    room.snapshot.facts.pop()
    pair!.isResting = true
    expect(asked()).toEqual([])
  })

  test('have their timers checked: the room’s hours, and those of a pair’s tank that has its own', () => {
    const room = pairRoom()
    const own = room.tank({ name: 'Late tank', kind: 'broodstock', lightHours: 14 })
    room.tank({ name: 'Nobody’s', kind: 'broodstock', lightHours: 10 })
    room.pair({ tankId: own.id })
    const draft = onlyDraft(room.drafts(date, [roomDayLength]))
    expect(saidTitle(draft)).toBe('Check the light timers: 07:00 to 19:00')
    expect(saidSteps(draft)).toEqual([
      '12 hours of light; watch a timer switch, or set it by the clock on the wall.',
      'Late tank: 14 hours, until 21:00.',
      'No light at night over a pair with eggs, not even from the next room.',
    ])
    expect(whyLines(draft)).toEqual([
      ...['not yet done', 'and 30 days from one time to the next', 'and light 07:00 to 19:00'],
    ])
    expect(new SnapshotBuilder().drafts(date, [roomDayLength]).drafts).toEqual([])
  })
})
