import type { ClutchIntent } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../../calendar/husbandry-day.ts'
import { checkValues } from '../../engine/check-values.ts'
import { clutchOutlook } from '../../state/clutch-outlook.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { clutchDark } from './clutch-dark.ts'
import { clutchDeadEggs } from './clutch-dead-eggs.ts'
import { clutchDecide } from './clutch-decide.ts'
import { clutchLook } from './clutch-look.ts'
import { clutchMorningAfter } from './clutch-morning-after.ts'
import { clutchPullNest } from './clutch-pull-nest.ts'
import { clutchReady } from './clutch-ready.ts'
import { clutchSecondNight } from './clutch-second-night.ts'
import { clutchWatch } from './clutch-watch.ts'
import { pairConditioning, pairWatchNew, roomDayLength } from './pair-watch.ts'

/** Ocellaris at 27 C spawned on 3 March at 10:00: its night is that of the 9th or the 10th. */
function room({ intent = 'raise_all', withTank = true }: { intent?: ClutchIntent; withTank?: boolean } = {}) {
  const built = new SnapshotBuilder()
  const pair = built.pair({ name: 'Pair A' })
  const clutch = built.clutch(pair, { name: 'A1', spawnedAt: '2026-03-03T10:00:00.000Z', eggs: 400, intent })
  const tank = withTank ? built.tank({ name: 'Nursery 1' }) : null
  return { built, pair, clutch, tank }
}
const likely = '2026-03-10'

describe('before the night', () => {
  test('a filter is taken out of the tank for larvae that are to grow to Artemia first', () => {
    const steps = (hasFilter: boolean) => {
      const { built, tank } = room()
      tank!.hasFilter = hasFilter
      return onlyDraft(built.drafts(likely, [clutchReady])).content.steps.map(({ text }) => text)
    }
    expect(steps(true).filter((text) => !steps(false).includes(text))).toEqual([
      'Its filter out, kept ripe in a sound tank until they take Artemia: say on the tank’s page that none runs.',
    ])
  })

  test('its chance is told as it stands, and once nights have passed as what it is if it was not before', () => {
    const { built } = room()
    const nights = (date: string) =>
      clutchOutlook(built.build(), built.build().clutches[0]!, husbandryDay({ room: built.build().room, date }))
        .forecast.nights
    const told = (date: string, rule: typeof clutchReady | typeof clutchLook | typeof clutchDark = clutchLook) =>
      onlyDraft(built.drafts(date, [rule])).content.because.find(({ label }) => label.startsWith('chance'))
    const chanceOf = (date: string) => nights(date).find((night) => night.date === date)!.probability
    const over = (date: string) =>
      nights(date)
        .filter((night) => night.date < date)
        .reduce((sum, { probability }) => sum + probability, 0)
    const early = told('2026-03-06')
    expect(early).toMatchObject({ label: 'chance that it is tonight' })
    expect(early?.quantity?.value).toBeCloseTo(chanceOf('2026-03-06'), 2)
    expect(over('2026-03-10')).toBeGreaterThan(0.1)
    expect(told('2026-03-10', clutchDark)).toMatchObject({ label: 'chance that it is tonight, if it was not before' })
    expect(told('2026-03-10', clutchDark)?.quantity?.value).toBeCloseTo(
      chanceOf('2026-03-10') / (1 - over('2026-03-10')),
      2,
    )
    // What is readied a day ahead goes by both nights.
    const ahead = told('2026-03-09', clutchReady)
    expect(ahead).toMatchObject({ label: 'chance of 2026-03-09 to 2026-03-10, together' })
    const both = nights('2026-03-09').filter(({ date }) => date === '2026-03-09' || date === '2026-03-10')
    expect(ahead?.quantity?.value).toBeCloseTo(both[0]!.probability + both[1]!.probability, 2)
  })

  test('whoever decides is told what room grow-out has left once the larvae that swim already have moved', () => {
    const { built } = room({ intent: 'undecided' })
    const steps = () => onlyDraft(built.drafts(likely, [clutchDecide])).content.steps
    const about = () =>
      steps().flatMap(({ text, quantities }) => (/row-out|before these|none is/.test(text) ? [[text, quantities]] : []))
    expect(about()).toEqual([['There is no grow-out tank: those that settle will want one in some weeks.', {}]])
    built.setting('juvenile-count', { parameters: { fishPerL: 1 } })
    const growOut = built.tank({ kind: 'grow_out', volumeL: 200 })
    built.group({ settledOn: '2026-02-01', tankId: growOut.id, number: 40 })
    const room160 = ['Grow-out has room for {room} young today.', { room: { value: 160, unit: 'animals' } }]
    expect(about()).toEqual([room160])
    const coming = (value: number) => [
      '{coming} young in larval tanks will want it before these.',
      { coming: { value, unit: 'animals' } },
    ]
    built.batch({ hatchedOn: '2026-03-01', larvae: 159 })
    expect(about()).toEqual([room160, coming(159)])
    built.batch({ hatchedOn: '2026-03-02', larvae: 1 })
    expect(about()).toEqual([
      room160,
      coming(160),
      ['So none is left for this clutch until fish are placed or a tank is added.', {}],
    ])
  })

  test('a tank is made ready from the day before a likely night, once', () => {
    const { built, clutch } = room()
    expect(built.drafts('2026-03-05', [clutchReady]).drafts).toEqual([])
    const draft = onlyDraft(built.drafts('2026-03-09', [clutchReady]))
    expect(saidTitle(draft)).toBe('Ready Nursery 1 for the larvae')
    expect(draft.content.cautions.join(' ')).toContain('dark')
    const [fact] = signOff(clutchReady, draft).facts
    expect(fact).toEqual({ kind: 'care', subjectId: clutch.id, data: { act: 'ready_hatch_tank' } })
    built.append(fact!, { at: '2026-03-09T07:30:00.000Z' })
    expect(built.drafts(likely, [clutchReady]).drafts).toEqual([])
  })

  test('a clutch that nobody has decided on is a question some days before, whose answer settles what is meant', () => {
    const { built, clutch } = room({ intent: 'undecided' })
    expect(built.drafts('2026-03-05', [clutchDecide]).drafts).toEqual([])
    const draft = onlyDraft(built.drafts('2026-03-07', [clutchDecide]))
    expect(draft).toMatchObject({ roundId: 'midday', isForStandIn: false })
    expect(draft.content.fields[0]).toMatchObject({ type: 'choice', name: 'intent', isRequired: true })
    const { facts } = signOff(clutchDecide, draft, { intent: 'raise_part' })
    expect(facts).toEqual([{ kind: 'decision', subjectId: clutch.id, data: { intent: 'raise_part' } }])
    built.append(facts[0]!, { at: '2026-03-07T07:30:00.000Z' })
    expect(built.drafts('2026-03-07', [clutchDecide]).drafts).toEqual([])
    const laid = { name: 'B1', spawnedAt: '2026-03-03T10:00:00.000Z', intent: 'undecided' } as const
    built.clutch(built.pair(), laid)
    const next = onlyDraft(built.drafts('2026-03-07', [clutchDecide])).content
    expect(next.steps.map(({ text }) => text)).toContain('To be raised already, each in a tank of its own: A1.')
  })

  test('the question tells what it rests on: the eggs, the tanks that are empty, and what is raised already', () => {
    const asked = (given: { tanks: number; eggs?: number; others: string[] }) => {
      const built = new SnapshotBuilder()
      const pair = built.pair()
      const spawnedAt = '2026-03-03T10:00:00.000Z'
      const eggs = given.eggs === undefined ? {} : { eggs: given.eggs }
      built.clutch(pair, { name: 'A1', spawnedAt, intent: 'undecided', ...eggs })
      for (const name of given.others) built.clutch(built.pair(), { name, spawnedAt, intent: 'raise_all' })
      for (let i = 1; i <= given.tanks; i += 1) built.tank({ name: `Nursery ${i}`, volumeL: 20 * i })
      const { content } = onlyDraft(built.drafts('2026-03-07', [clutchDecide]))
      const said = content.steps.map(({ text, quantities }) => [text, quantities.volume?.value ?? null])
      return { said: said.slice(1, -2), eggs: content.because.find(({ label }) => label === 'in it')?.quantity }
    }
    expect(asked({ tanks: 0, eggs: 400, others: [] })).toEqual({
      said: [['No larval tank is empty: raising them means to free one.', null]],
      eggs: { value: 400, unit: 'eggs' },
    })
    expect(asked({ tanks: 2, others: ['B1', 'C1'] })).toEqual({
      said: [
        ['Nursery 1 is empty: {volume}.', 20],
        ['Nursery 2 is empty: {volume}.', 40],
        ['To be raised already, each in a tank of its own: B1, C1.', null],
      ],
      eggs: undefined,
    })
  })

  test('the question is put while its night may be the last or the first of the days that it looks ahead', () => {
    const { built } = room({ intent: 'undecided' })
    const all = (daysAhead: number, on: string) => {
      built.setting('clutch-decide', { parameters: { daysAhead, fromChance: 0.3 } })
      return built.drafts(on, [clutchDecide]).drafts.length
    }
    // The night of the 9th is a likely one: two days from the 7th, and the very day.
    expect([all(1, '2026-03-07'), all(2, '2026-03-07'), all(0, '2026-03-09')]).toEqual([0, 1, 1])
  })

  test('nothing is made ready before the decision; a room that has switched the question off is told what is missing', () => {
    const { built } = room({ intent: 'undecided' })
    expect(built.drafts('2026-03-09', [clutchReady])).toEqual({ drafts: [], gaps: [] })
    built.setting('clutch-decide', { isOn: false })
    expect(built.drafts('2026-03-09', [clutchReady]).gaps[0]?.message).toContain(
      'decide on its page whether to raise all, part or none',
    )
  })

  test('a room without an empty tank is told so', () => {
    expect(room({ withTank: false }).built.drafts('2026-03-09', [clutchReady]).gaps[0]?.message).toContain(
      'no larval tank is empty',
    )
  })

  test('clutches of one night have a tank each: of the last, the list says that none is left', () => {
    const { built, clutch } = room()
    const laid = { spawnedAt: '2026-03-03T10:30:00.000Z', eggs: 300 }
    const second = built.clutch(built.pair({ species: 'amphiprion-clarkii' }), { name: 'B1', ...laid })
    const third = built.clutch(built.pair({ species: 'amphiprion-percula' }), { name: 'C1', ...laid })
    built.tank({ name: 'Nursery 2' })
    const asked = (rule: typeof clutchReady) => built.drafts(likely, [rule])
    expect(asked(clutchReady).drafts.map((draft) => [draft.subjectId, saidTitle(draft)])).toEqual([
      [clutch.id, 'Ready Nursery 1 for the larvae'],
      [second.id, 'Ready Nursery 2 for the larvae'],
    ])
    expect(asked(clutchReady).gaps.map(({ message }) => message)).toEqual([
      'C1 may hatch soon, and every empty larval tank is for another clutch: ready one or add one.',
    ])
    // Whoever was readied first keeps its tank.
    built.fact('care', second.id, '2026-03-10T07:10:00.000Z', { act: 'ready_hatch_tank' })
    const pulled = asked(clutchPullNest).drafts.map(({ subjectId, content }) => [subjectId, content.steps[0]?.text])
    expect(pulled.filter(([id]) => id !== third.id)).toEqual([
      [clutch.id, expect.stringMatching(/^Into Nursery 2,/)],
      [second.id, expect.stringMatching(/^Into Nursery 1,/)],
    ])
    const morning = built.drafts('2026-03-11', [clutchMorningAfter]).drafts
    const placeOf = (id: string) =>
      morning
        .find(({ subjectId }) => subjectId === id)
        ?.content.fields.flatMap(({ name, help }) => (name === 'tank' ? [help] : []))[0]
    expect([clutch, second, third].map(({ id }) => placeOf(id)?.split(' when')[0])).toEqual([
      'Nursery 2',
      'Nursery 1',
      expect.stringMatching(/^Every empty larval tank is for another clutch: T\d+, where the eggs were,/),
    ])
  })

  test('two of one species share the tank where there is only one', () => {
    const { built } = room()
    built.clutch(built.pair(), { name: 'B1', spawnedAt: '2026-03-03T10:30:00.000Z', eggs: 300 })
    expect(built.drafts(likely, [clutchReady]).drafts.map(saidTitle)).toEqual([
      'Ready Nursery 1 for the larvae',
      'Ready Nursery 1 for the larvae',
    ])
  })

  test('one left with its parents asks for nothing but the look', () => {
    const { built } = room({ intent: 'leave_with_parents' })
    const all = [clutchDecide, clutchReady, clutchPullNest, clutchDark, clutchWatch]
    expect(built.drafts(likely, all)).toEqual({ drafts: [], gaps: [] })
  })

  test('the nest is pulled in the afternoon of a likely night, two hours before lights off where a round allows it', () => {
    const { built, clutch } = room()
    expect(built.drafts('2026-03-06', [clutchPullNest]).drafts).toEqual([])
    const draft = onlyDraft(built.drafts(likely, [clutchPullNest]))
    // Rounds at 07:00, 12:30 and 18:30, lights off at 19:00.
    expect(draft.roundId).toBe('midday')
    expect(draft.closesAt).toBe('2026-03-10T19:00:00.000Z')
    expect(saidTitle(draft)).toMatch(/^Pull the nest: tonight (likely|almost certain) \(\d+%\)$/)
    const [fact] = signOff(clutchPullNest, draft).facts
    expect(fact).toEqual({ kind: 'care', subjectId: clutch.id, data: { act: 'pull_nest' } })
    built.append(fact!, { at: '2026-03-10T17:00:00.000Z' })
    expect(built.drafts(likely, [clutchPullNest]).drafts).toEqual([])
    // With no round in the afternoon, late is better than a day without the father.
    const two = room()
    two.built.snapshot.room.rounds = two.built.snapshot.room.rounds.filter(({ id }) => id !== 'midday')
    expect(onlyDraft(two.built.drafts(likely, [clutchPullNest])).roundId).toBe('evening')
    // Nine hours before dark are a morning: eight at most.
    const [morning, evening] = two.built.snapshot.room.rounds
    const pulledIn = (at: string) => {
      two.built.snapshot.room.rounds = [morning!, { id: 'middle', name: 'Middle', at }, evening!]
      return onlyDraft(two.built.drafts(likely, [clutchPullNest])).roundId
    }
    expect(pulledIn('11:00')).toBe('middle')
    expect(pulledIn('10:30')).not.toBe('middle')
  })

  test('dark is asked for that evening, and a watch from lights off', () => {
    const { built, clutch } = room()
    const { drafts } = built.drafts(likely, [clutchDark, clutchWatch])
    expect(drafts.map(({ ruleId, roundId, dueAt }) => [ruleId, roundId, dueAt])).toEqual([
      ['clutch-dark', 'evening', '2026-03-10T18:30:00.000Z'],
      ['clutch-watch', 'evening', '2026-03-10T19:00:00.000Z'],
    ])
    expect(drafts[1]?.lateAt).toBe('2026-03-10T22:00:00.000Z')
    expect(signOff(clutchDark, drafts[0]!).facts[0]).toMatchObject({ data: { act: 'darken' } })
    expect(signOff(clutchWatch, drafts[1]!, { hatching: 'some' }).facts).toEqual([
      {
        kind: 'observation',
        subjectId: clutch.id,
        data: { signs: ['larvae_out', 'eggs_seen'], note: 'Some are out.' },
      },
    ])
  })
})

describe('the morning after', () => {
  const morning = '2026-03-11'

  test('asks what hatched, and makes a batch of it in the tank that was ready', () => {
    const { built, clutch, tank } = room()
    const draft = onlyDraft(built.drafts(morning, [clutchMorningAfter]))
    const all = signOff(clutchMorningAfter, draft, { hatched: 'all', larvae: 350 })
    expect(all).toEqual({
      facts: [{ kind: 'observation', subjectId: clutch.id, data: { signs: ['no_eggs'] } }],
      creations: [
        {
          kind: 'larval_batch',
          tank: { id: tank?.id },
          species: 'amphiprion-ocellaris',
          clutchIds: [clutch.id],
          hatchedOn: likely,
          larvae: 350,
          cultureIds: [],
        },
      ],
    })
    expect(signOff(clutchMorningAfter, draft, { hatched: 'none' })).toEqual({
      facts: [{ kind: 'observation', subjectId: clutch.id, data: { signs: ['eggs_seen'] } }],
    })
  })

  test('with no empty larval tank they are where they hatched, and never nowhere', () => {
    const { built, pair } = room({ withTank: false })
    const draft = onlyDraft(built.drafts(morning, [clutchMorningAfter]))
    const places = draft.content.fields.find(({ name }) => name === 'tank')
    expect(places?.help).toContain('No larval tank is empty')
    const [creation] = signOff(clutchMorningAfter, draft, { hatched: 'all', larvae: 350 }).creations ?? []
    expect(creation).toMatchObject({ kind: 'larval_batch', tank: { id: pair.tankId }, larvae: 350 })
  })

  test('a tank that is not on the list is made at the eggs’ own warmth and salinity, once its litres are said', () => {
    const { built } = room({ withTank: false })
    const draft = onlyDraft(built.drafts(morning, [clutchMorningAfter]))
    expect(clutchMorningAfter.check?.({ hatched: 'all', tank: 'new' })[0]?.path).toBe('values.newTankL')
    const values = { hatched: 'all', tank: 'new', newTankL: 25 }
    expect(clutchMorningAfter.check?.(values)).toEqual([])
    const [creation] = signOff(clutchMorningAfter, draft, values).creations ?? []
    expect(creation).toMatchObject({ tank: { volumeL: 25, temperatureC: 27, salinity: 35 } })
  })

  test('the night is last night unless another is said: none before laying, and never tonight’s', () => {
    const { built } = room()
    const nights = (date: string) => {
      const field = onlyDraft(built.drafts(date, [clutchMorningAfter])).content.fields.find(
        ({ name }) => name === 'night',
      )
      return field?.type === 'choice' ? field.choices.map(({ value }) => value) : []
    }
    expect(nights(morning)).toEqual(['2026-03-10', '2026-03-09', '2026-03-08'])
    const draft = onlyDraft(built.drafts(morning, [clutchMorningAfter]))
    expect(signOff(clutchMorningAfter, draft, { hatched: 'all' }).creations?.[0]).toMatchObject({ hatchedOn: likely })
    const earlier = signOff(clutchMorningAfter, draft, { hatched: 'all', night: '2026-03-09' })
    expect(earlier.creations?.[0]).toMatchObject({ hatchedOn: '2026-03-09' })
  })

  test('more larvae than eggs are asked about', () => {
    const { built } = room()
    const { fields } = onlyDraft(built.drafts(morning, [clutchMorningAfter])).content
    const check = (larvae: number) => checkValues({ fields, values: { hatched: 'all', larvae }, confirmed: [] })
    expect(check(400).improbable).toEqual([])
    expect(check(401).improbable.map(({ path }) => path)).toEqual(['values.larvae'])
  })

  test('the culture that feeds fewest batches and holds most feeds them, unless another is said; a backup never', () => {
    const { built } = room()
    built.concentrate()
    const startedAt = '2026-03-01T07:00:00.000Z'
    const [thin, dense, backup] = ['Thin', 'Dense', 'Backup'].map((name) =>
      built.culture({ name, startedAt, isBackup: name === 'Backup' }),
    )
    for (const [culture, perMl] of [
      [thin, 100],
      [dense, 300],
      [backup, 900],
    ] as const)
      built.count(culture!, '2026-03-10T07:00:00.000Z', [perMl, perMl, perMl])
    const draft = onlyDraft(built.drafts(morning, [clutchMorningAfter]))
    const fedBy = (values: object) => signOff(clutchMorningAfter, draft, { hatched: 'all', ...values }).creations?.[0]
    expect(fedBy({})).toMatchObject({ cultureIds: [dense!.id] })
    expect(fedBy({ culture: thin!.id })).toMatchObject({ cultureIds: [thin!.id] })
    const field = draft.content.fields.find(({ name }) => name === 'culture')
    expect(field?.type === 'choice' && field.choices.map(({ value }) => value)).toEqual([dense!.id, thin!.id])
  })

  test('stands in for the day’s look, and asks for the colour of what is left', () => {
    const { built, clutch } = room()
    expect(built.drafts(morning, [clutchLook]).drafts).toEqual([])
    const draft = onlyDraft(built.drafts(morning, [clutchMorningAfter]))
    expect(signOff(clutchMorningAfter, draft, { hatched: 'none', eggStage: 'silver' }).facts).toEqual([
      { kind: 'observation', subjectId: clutch.id, data: { signs: ['eggs_seen'], eggStage: 'silver' } },
    ])
    built.setting('clutch-morning-after', { isOn: false })
    expect(built.drafts(morning, [clutchLook]).drafts).toHaveLength(1)
  })

  test('a clutch left with its parents is written down as hatched, without a batch', () => {
    const { built, clutch } = room({ intent: 'leave_with_parents' })
    const draft = onlyDraft(built.drafts(morning, [clutchMorningAfter]))
    expect(signOff(clutchMorningAfter, draft, { hatched: 'all' }).facts[0]).toEqual({
      kind: 'hatch',
      subjectId: clutch.id,
      data: { hatchedOn: likely },
    })
  })

  test('is not asked after an unlikely night, nor once today’s look saw eggs', () => {
    const { built, clutch } = room()
    expect(built.drafts('2026-03-06', [clutchMorningAfter]).drafts).toEqual([])
    built.fact('observation', clutch.id, '2026-03-11T06:30:00.000Z', { signs: ['eggs_seen'], eggStage: 'silver' })
    expect(built.drafts(morning, [clutchMorningAfter]).drafts).toEqual([])
  })

  test('is asked after any night in which somebody found them out, until it is answered', () => {
    // Four days old: the night of the 6th is far too early to ask of itself.
    const early = '2026-03-07'
    const { built, clutch } = room()
    const asked = (date: string) => built.drafts(date, [clutchMorningAfter]).drafts[0]
    expect(asked(early)).toBeUndefined()
    const look = onlyDraft(built.drafts(early, [clutchLook]))
    const [seen, ...others] = signOff(clutchLook, look, { eggStage: 'out' }).facts
    expect(others).toEqual([])
    expect(seen).toEqual({ kind: 'observation', subjectId: clutch.id, data: { signs: ['larvae_out'] } })
    built.append(seen!, { at: '2026-03-07T07:30:00.000Z' })
    expect(built.drafts(early, [clutchLook]).drafts).toEqual([])
    expect(signOff(clutchMorningAfter, asked(early)!, { hatched: 'all', larvae: 300 }).creations).toMatchObject([
      { kind: 'larval_batch', hatchedOn: '2026-03-06', larvae: 300 },
    ])
    // A day later it was still that night.
    const late = asked('2026-03-08')!
    expect(late.content.fields.find(({ name }) => name === 'night')?.help).toMatch(/^The night before when left empty/)
    expect(signOff(clutchMorningAfter, late, { hatched: 'all' }).creations).toMatchObject([{ hatchedOn: '2026-03-06' }])
    const [none] = signOff(clutchMorningAfter, asked(early)!, { hatched: 'none' }).facts
    built.append(none!, { at: '2026-03-07T07:40:00.000Z' })
    expect(asked(early)).toBeUndefined()
    expect(asked('2026-03-08')).toBeUndefined()
  })

  test('a watch that saw them come is followed by the question on the next morning, of that night', () => {
    const { built, clutch } = room()
    built.fact('observation', clutch.id, '2026-03-07T19:40:00.000Z', { signs: ['larvae_out'] })
    expect(built.drafts('2026-03-07', [clutchMorningAfter]).drafts).toEqual([])
    const draft = onlyDraft(built.drafts('2026-03-08', [clutchMorningAfter]))
    expect(signOff(clutchMorningAfter, draft, { hatched: 'all' }).creations).toMatchObject([
      { hatchedOn: '2026-03-07' },
    ])
  })

  test('what was seen to be out says nothing against the nights before it', () => {
    const chance = (signs: ('eggs_seen' | 'larvae_out')[]) => {
      const { built, clutch } = room()
      built.fact('observation', clutch.id, '2026-03-10T20:00:00.000Z', { signs })
      return clutchOutlook(built.build(), clutch, husbandryDay({ room: built.build().room, date: likely })).tonight
    }
    expect(chance(['larvae_out'])).toBeGreaterThan(chance(['eggs_seen']))
  })

  test('a part that was left is asked about after the second night, and joins the same batch', () => {
    const { built, clutch } = room()
    const batch = built.batch({ hatchedOn: likely, clutchIds: [clutch.id], larvae: 250 })
    built.fact('hatch', clutch.id, '2026-03-11T07:00:00.000Z', { hatchedOn: likely, batchId: batch.id, larvae: 250 })
    expect(built.drafts('2026-03-12', [clutchSecondNight]).drafts).toEqual([])
    built.fact('observation', clutch.id, '2026-03-11T07:00:00.000Z', { signs: ['eggs_seen'] })
    expect(built.drafts(morning, [clutchSecondNight]).drafts).toEqual([])
    const draft = onlyDraft(built.drafts('2026-03-12', [clutchSecondNight]))
    expect(signOff(clutchSecondNight, draft, { larvae: 40 }).facts).toEqual([
      { kind: 'hatch', subjectId: clutch.id, data: { hatchedOn: '2026-03-11', larvae: 40, batchId: batch.id } },
      { kind: 'observation', subjectId: clutch.id, data: { signs: ['no_eggs'] } },
    ])
    expect(built.drafts('2026-03-13', [clutchSecondNight]).drafts).toEqual([])
  })
})

describe('young that a parent carries', () => {
  const species = { mouth: 'pterapogon-kauderni', pouch: 'hippocampus-erectus' }
  function carried(care: 'mouth' | 'pouch') {
    const built = new SnapshotBuilder()
    const pair = built.pair({ species: species[care] })
    const clutch = built.clutch(pair, { care, spawnedAt: '2026-02-20T10:00:00.000Z' })
    const nursery = built.tank({ name: 'Nursery 1' })
    return { built, clutch, nursery }
  }

  test.each(['mouth', 'pouch'] as const)('are asked about without a word of a nest, from a %s', (care) => {
    const { built, clutch, nursery } = carried(care)
    built.fact('observation', clutch.id, '2026-03-07T07:00:00.000Z', { signs: ['no_eggs'] })
    const draft = onlyDraft(built.drafts('2026-03-07', [clutchMorningAfter]))
    expect(saidTitle(draft)).toBe('Are the young out?')
    const said = JSON.stringify([draft.content.steps, draft.content.fields])
    expect(said).not.toMatch(/nest|surface|where the eggs were|Hatched/)
    expect(said).toContain('in a cup or a jug, in water, never in a net')
    expect(signOff(clutchMorningAfter, draft, { hatched: 'all', larvae: 37 }).creations).toMatchObject([
      { kind: 'larval_batch', tank: { id: nursery.id }, hatchedOn: '2026-03-06', larvae: 37 },
    ])
  })

  test.each(['mouth', 'pouch'] as const)('come on the next night too, from a %s that still carries some', (care) => {
    const { built, clutch } = carried(care)
    const batch = built.batch({ hatchedOn: '2026-03-08', clutchIds: [clutch.id], species: clutch.species })
    built.fact('hatch', clutch.id, '2026-03-09T07:00:00.000Z', { hatchedOn: '2026-03-08', batchId: batch.id })
    built.fact('observation', clutch.id, '2026-03-09T07:00:00.000Z', { signs: ['eggs_seen'] })
    const draft = onlyDraft(built.drafts('2026-03-10', [clutchSecondNight]))
    expect(saidTitle(draft)).toBe('Have more young come out?')
    expect(JSON.stringify(draft.content)).not.toContain('nest')
    // Of forty or so each one is written down.
    expect(draft.content.fields[0]).toMatchObject({ name: 'larvae', step: care === 'mouth' ? 1 : 10 })
    expect(signOff(clutchSecondNight, draft, { larvae: 12 }).facts[0]).toEqual({
      ...{ kind: 'hatch', subjectId: clutch.id },
      data: { hatchedOn: '2026-03-09', larvae: 12, batchId: batch.id },
    })
  })

  test('that are out before they were likely are asked about in the same round', () => {
    const { built, clutch } = carried('mouth')
    const look = onlyDraft(built.drafts('2026-03-02', [clutchLook]))
    expect(built.drafts('2026-03-02', [clutchMorningAfter]).drafts).toEqual([])
    const { facts } = signOff(clutchLook, look, { brood: 'out' })
    expect(facts).toEqual([{ kind: 'observation', subjectId: clutch.id, data: { signs: ['larvae_out'] } }])
    built.append(facts[0]!, { at: '2026-03-02T07:20:00.000Z' })
    const asked = onlyDraft(built.drafts('2026-03-02', [clutchMorningAfter]))
    expect(signOff(clutchMorningAfter, asked, { hatched: 'part' }).creations).toMatchObject([
      { hatchedOn: '2026-03-01' },
    ])
  })

  test('have a tank readied, and are watched for without stirring the eggs of anybody', () => {
    const { built } = carried('pouch')
    expect(saidTitle(onlyDraft(built.drafts('2026-03-09', [clutchReady])))).toBe('Ready Nursery 1 for the young')
    // Any night of a birth is less likely than one of a nest.
    built.setting('clutch-watch', { parameters: { fromChance: 0.1 } })
    const { content } = onlyDraft(built.drafts('2026-03-09', [clutchWatch]))
    expect(JSON.stringify(content.steps)).toContain('Leave the parent in peace')
    expect(JSON.stringify(content.steps)).not.toContain('air on the eggs')
  })
})

describe('dead eggs', () => {
  test('from a twentieth of the clutch on are taken out, once', () => {
    const { built, clutch } = room()
    built.fact('loss', clutch.id, '2026-03-06T07:30:00.000Z', { number: 15, of: 'eggs' })
    expect(built.drafts('2026-03-06', [clutchDeadEggs]).drafts).toEqual([])
    built.fact('loss', clutch.id, '2026-03-06T12:30:00.000Z', { number: 10, of: 'eggs' })
    const draft = onlyDraft(built.drafts('2026-03-06', [clutchDeadEggs]))
    built.append(signOff(clutchDeadEggs, draft).facts[0]!, { at: '2026-03-06T18:40:00.000Z' })
    expect(built.drafts('2026-03-06', [clutchDeadEggs]).drafts).toEqual([])
  })
})

describe('pairs beside their feeds', () => {
  test('a new pair is watched each evening of its first fortnight', () => {
    const built = new SnapshotBuilder()
    const pair = built.pair({ name: 'Pair B', formedOn: '2026-03-08' })
    const draft = onlyDraft(built.drafts(likely, [pairWatchNew]))
    expect(signOff(pairWatchNew, draft).facts[0]).toMatchObject({ data: { signs: ['all_well'] } })
    const [fact] = signOff(pairWatchNew, draft, { signs: ['fighting'] }).facts
    expect(fact).toEqual({ kind: 'observation', subjectId: pair.id, data: { signs: ['fighting'] } })
    built.append(fact!, { at: '2026-03-10T18:40:00.000Z' })
    expect(built.drafts(likely, [pairWatchNew]).drafts).toEqual([])
    expect(built.drafts('2026-03-22', [pairWatchNew]).drafts).toEqual([])
  })

  test('conditioning is off until it is asked for, and not for a brooding pair', () => {
    const { built } = room()
    built.setting('pair-conditioning', { isOn: true })
    expect(built.drafts(likely, [pairConditioning]).drafts).toEqual([])
    const other = new SnapshotBuilder()
    other.pair()
    expect(other.drafts(likely, [pairConditioning]).drafts).toEqual([])
    other.setting('pair-conditioning', { isOn: true })
    expect(signOff(pairConditioning, onlyDraft(other.drafts(likely, [pairConditioning]))).facts[0]).toMatchObject({
      data: { food: 'fresh' },
    })
  })

  test('the light timers are checked monthly by the room’s own hours', () => {
    const { built } = room()
    const draft = onlyDraft(built.drafts(likely, [roomDayLength]))
    expect(draft.content.steps[0]?.quantities.hours).toEqual({ value: 12, unit: 'hours' })
    built.append(signOff(roomDayLength, draft).facts[0]!, { at: '2026-03-10T07:30:00.000Z' })
    expect(built.drafts('2026-04-08', [roomDayLength]).drafts).toEqual([])
    expect(built.drafts('2026-04-09', [roomDayLength]).drafts).toHaveLength(1)
  })
})
