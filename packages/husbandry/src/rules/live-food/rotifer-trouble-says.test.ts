import { describe, expect, test } from 'vitest'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { disinfectionCautions } from '../../task/cautions.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { rotiferRecount } from './rotifer-recount.ts'
import { rotiferRescue } from './rotifer-rescue.ts'
import { rotiferTrouble } from './rotifer-trouble.ts'

const date = '2026-03-10'
const startedAt = '2026-02-20T08:00:00.000Z'
type Sign = 'swimming_slow' | 'sinking' | 'bad_smell' | 'foam' | 'swimming_well' | 'water_tinted'

function cultureRoom(given: Partial<SnapshotCulture> = {}) {
  const room = new SnapshotBuilder()
  const culture = room.culture({ name: 'R1', startedAt, ...given })
  const algae = room.culture({ name: 'A1', kind: 'microalgae', strain: null, startedAt })
  const counted = (at: string, perMl: number, eggs: { eggs?: number; females?: number } = {}) =>
    room.count(culture, at, [perMl, perMl, perMl], eggs)
  const looked = (at: string, ...signs: Sign[]) => room.fact('observation', culture.id, at, { signs })
  return { room, culture, algae, counted, looked }
}

describe('a count to be made again', () => {
  const recounts = (room: SnapshotBuilder, on = date) => room.drafts(on, [rotiferRecount]).drafts

  test('is made in the round of the low one, late after an hour, or the next morning; never of what was not counted', () => {
    const { room, counted } = cultureRoom()
    expect(recounts(room)).toEqual([])
    counted('2026-03-08T06:30:00.000Z', 200)
    counted('2026-03-09T13:00:00.000Z', 100)
    expect(recounts(room, '2026-03-09')).toMatchObject([
      { roundId: 'midday', dueAt: '2026-03-09T12:30:00.000Z', lateAt: '2026-03-09T13:30:00.000Z' },
    ])
    expect(recounts(room)).toMatchObject([{ roundId: 'morning' }])
    room.snapshot.facts.pop()
    counted('2026-03-10T00:00:00.000Z', 100)
    expect(recounts(room)).toMatchObject([{ roundId: 'morning' }])
    const [, algae] = room.snapshot.cultures
    for (const [on, perMl] of [
      ['08', 200],
      ['09', 100],
    ] as const)
      room.count(algae!, `2026-03-${on}T06:30:00.000Z`, [perMl, perMl, perMl])
    expect(recounts(room).map(({ subjectName }) => subjectName)).toEqual(['R1'])
  })

  test('says what part is gone, why, and believes anything from half of the low one to twice the one before', () => {
    const { room, counted } = cultureRoom()
    counted('2026-03-09T06:30:00.000Z', 201)
    counted('2026-03-10T06:30:00.000Z', 91)
    const [draft] = recounts(room)
    // 1 - 91 / 201 is 0.547.
    expect(saidTitle(draft)).toBe('Count rotifers again: 55% are gone')
    expect(whyLines(draft)).toEqual([
      ...['91 per_mL counted', 'and 201 per_mL should be left without growing', 'equals 0.55 share gone'],
    ])
    expect(saidSteps(draft)[1]).toContain('take 3 samples of 1 mL again, from other places')
    expect(draft?.content.fields[0]).toMatchObject({
      ...{ name: 'count', isRequired: true, withEggs: true, replicates: 3, usual: null },
      ...{ likelyMinimum: 45.5, likelyMaximum: 402 },
    })
    // What should be left is told to three figures.
    const dense = cultureRoom()
    dense.counted('2026-03-09T06:30:00.000Z', 1234)
    dense.counted('2026-03-10T06:30:00.000Z', 500)
    expect(whyLines(recounts(dense.room)[0])[1]).toBe('and 1230 per_mL should be left without growing')
    const thin = cultureRoom()
    thin.counted('2026-03-09T06:30:00.000Z', 4)
    thin.counted('2026-03-10T06:30:00.000Z', 1)
    expect(recounts(thin.room)[0]?.content.fields[0]).toMatchObject({ likelyMinimum: 1, likelyMaximum: 20 })
  })

  test('of eggs is for few of them on few females: under 0.13 on fewer than fifty', () => {
    const asked = (eggs: number, females?: number) => {
      const { room, counted } = cultureRoom()
      counted('2026-03-10T06:30:00.000Z', 200, { eggs, ...(females === undefined ? {} : { females }) })
      return recounts(room)
    }
    // Snell, Childress, Boyer & Hoff 1987: 0.13 eggs a female; 13 of 100 are no fewer.
    expect([asked(5, 49).length, asked(5, 50).length, asked(6, 40).length]).toEqual([1, 0, 0])
    expect(asked(0)).toEqual([])
    const [draft] = asked(4, 36)
    expect(saidTitle(draft)).toBe('Count eggs again, on 50 adult females')
    expect(saidSteps(draft)[0]).toMatch(/^Look at 50 animals/)
    expect(whyLines(draft)).toEqual(['36 animals 0.11 eggs a female, on', 'and 50 animals wanted'])
    // Either count alone says what is likely: 100 to 400.
    expect(draft?.content.fields[0]).toMatchObject({ likelyMinimum: 100, likelyMaximum: 400 })
  })
})

describe('a culture in trouble', () => {
  const troubles = (room: SnapshotBuilder, on = date) => room.drafts(on, [rotiferTrouble]).drafts
  const air = /^Check the air first/
  const half = /^Change half of the water/
  const thin = /^Do not thin it/
  const about = (said: readonly string[], ...patterns: RegExp[]) =>
    patterns.map((pattern) => said.some((step) => pattern.test(step)))

  test('is seen to first thing, within the hour, for each sign that was seen, and no other culture with its tools', () => {
    const { room, looked, culture, counted } = cultureRoom()
    for (const [on, perMl] of [
      ['03', 210],
      ['05', 220],
      ['07', 230],
      ['09', 240],
    ] as const)
      counted(`2026-03-${on}T06:30:00.000Z`, perMl, on === '09' ? { eggs: 30, females: 60 } : {})
    looked('2026-03-09T18:30:00.000Z', 'swimming_slow', 'sinking', 'foam')
    looked('2026-03-10T06:30:00.000Z', 'bad_smell')
    const [draft] = troubles(room)
    expect(draft).toMatchObject({ roundId: 'morning', lateAt: '2026-03-10T08:00:00.000Z' })
    expect(saidTitle(draft)).toBe('See to it: they swim slowly, they sink or clump, it smells')
    const steps = saidSteps(draft)
    expect(steps).toEqual([
      expect.stringMatching(/^Before feeding: a drop under the lens/),
      expect.stringMatching(air),
      expect.stringMatching(/^Change a quarter to a half of the water/),
      'Touch no other culture with hands or tools that were in R1.',
      expect.stringMatching(/start it again from the backup/),
    ])
    expect(whyLines(draft)).toEqual([
      ...['seen swimming slow, sinking, foam', 'and seen bad smell'],
      ...['and 220 per_mL counted', 'and 230 per_mL counted', 'and 240 per_mL counted, 0.50 eggs a female'],
      ...['and they swim slowly', 'and they sink or clump', 'and it smells', 'and 24 hours that signs count for'],
    ])
    expect(draft?.content.fields.map(({ name }) => name)).toEqual(['signs', 'did', 'note'])
    // Nothing is to be changed for that: what is said of it is a note.
    expect(signOff(rotiferTrouble, draft!, { did: 'thinned', amountL: 4 }).facts.map(({ kind }) => kind)).toEqual([
      'observation',
    ])
    expect(signOff(rotiferTrouble, draft!).facts[0]?.subjectId).toBe(culture.id)
  })

  test('of foul water has half of it changed; by its pH or its ammonia, and of neither for want of oxygen', () => {
    const found = (read: { totalAmmoniaNMgPerL?: number; pH?: number; oxygenMgPerL?: number }) => {
      const { room, culture } = cultureRoom()
      room.fact('water_test', culture.id, `${date}T06:40:00.000Z`, read)
      const [draft] = troubles(room)
      const said = about(saidSteps(draft), half, /^More air at once/, air, thin)
      const changed = draft?.content.fields.find(({ name }) => name === 'amountL')
      return { draft, said, changed, why: whyLines(draft), title: saidTitle(draft) }
    }
    // pH 6.6 is the end of them; 1 mg/L of NH3; 2 mg/L of oxygen: FAO Fish. Tech. Pap. 361, sect. 3.5, from memory.
    const sour = found({ pH: 6.5 })
    expect([sour.title, sour.said]).toEqual(['See to it: pH is low', [true, false, false, false]])
    expect(sour.changed).toMatchObject({ label: 'Water changed, if any', usual: 9, maximum: 18 })
    expect(sour.why).toEqual(['water tested', 'and pH is low', 'and 24 hours that signs count for'])
    expect(found({ totalAmmoniaNMgPerL: 18, pH: 8.3 }).said).toEqual([true, false, false, false])
    const airless = found({ oxygenMgPerL: 1.8, pH: 7.8 })
    expect([airless.title, airless.said]).toEqual(['See to it: oxygen is low', [false, true, false, false]])
    expect(airless.changed).toBeUndefined()
    const change = (values: Record<string, unknown>) =>
      signOff(rotiferTrouble, sour.draft!, values).facts.flatMap(({ kind, data }) =>
        kind === 'water_change' ? [data] : [],
      )
    expect([change({}), change({ did: 'restarted' })]).toEqual([[], []])
    expect(change({ did: 'thinned' })).toEqual([{ removedL: 9, addedL: 9 }])
    expect(change({ amountL: 5 })).toEqual([{ removedL: 5, addedL: 5 }])
    const before = { ...sour.draft!, context: {} }
    expect(signOff(rotiferTrouble, before, { did: 'thinned' }).facts.map(({ kind }) => kind)).toEqual(['observation'])
  })

  test('that falls by its counts is not thinned, and says so; so is one of few eggs', () => {
    const { room, counted } = cultureRoom()
    counted('2026-03-08T06:30:00.000Z', 300)
    counted('2026-03-09T06:30:00.000Z', 240)
    counted('2026-03-10T06:30:00.000Z', 192)
    expect(saidTitle(troubles(room)[0])).toBe('See to it: the counts fall')
    expect(about(saidSteps(troubles(room)[0]), thin, air, half)).toEqual([true, false, false])
    const eggs = cultureRoom()
    eggs.counted('2026-03-10T06:30:00.000Z', 200, { eggs: 1, females: 60 })
    const [draft] = troubles(eggs.room)
    expect([saidTitle(draft), about(saidSteps(draft), thin, air, half)]).toEqual([
      ...['See to it: hardly any carry eggs', [true, false, false]],
    ])
    // Found well since, the eggs of that count are done with; a look of before it says nothing of them.
    eggs.looked('2026-03-10T06:00:00.000Z', 'swimming_well')
    expect(troubles(eggs.room)).toHaveLength(1)
    eggs.looked('2026-03-10T06:30:00.000Z', 'swimming_well')
    expect(troubles(eggs.room)).toHaveLength(1)
    eggs.looked('2026-03-10T06:31:00.000Z', 'swimming_well')
    expect(troubles(eggs.room)).toEqual([])
  })

  test('falls too where a second count agrees with the first low one, though it fell no further', () => {
    const { room, counted } = cultureRoom()
    counted('2026-03-08T06:30:00.000Z', 300)
    counted('2026-03-09T06:30:00.000Z', 150)
    expect(troubles(room, '2026-03-09')).toEqual([])
    counted('2026-03-10T06:30:00.000Z', 147)
    expect(saidTitle(troubles(room)[0])).toBe('See to it: the counts fall')
  })

  test('crowded and short of eggs is to be thinned by what the list says, and no further once that is out', () => {
    const { room, culture, counted } = cultureRoom()
    for (const [on, perMl] of [
      ['04', 640],
      ['05', 690],
      ['06', 720],
      ['07', 735],
      ['08', 730],
      ['09', 742],
      ['10', 738],
    ] as const)
      counted(`2026-03-${on}T06:30:00.000Z`, perMl, { eggs: 3, females: 60 })
    const done = /^It was thinned since it was crowded: take no more/
    const said = () => about(saidSteps(troubles(room)[0]), /^Thin it today by the litres/, done, thin)
    expect(said()).toEqual([true, false, false])
    expect(saidTitle(troubles(room)[0])).toBe('See to it: it is crowded and hardly any carry eggs')
    // Half of 18 L in a day.
    room.fact('harvest', culture.id, `${date}T07:10:00.000Z`, { volumeL: 9, parts: [{ to: 'drain', volumeL: 9 }] })
    expect(said()).toEqual([false, true, false])
    expect(saidTitle(troubles(room)[0])).toBe('See to it: it is crowded and hardly any carry eggs')
    // Eggs take two days to come back; after that few of them are trouble of another kind.
    const later = (on: string) => about(saidSteps(troubles(room, on)[0]), done, thin)
    counted('2026-03-11T06:30:00.000Z', 330, { eggs: 3, females: 60 })
    counted('2026-03-12T06:30:00.000Z', 350, { eggs: 3, females: 60 })
    expect([later('2026-03-11'), later('2026-03-12')]).toEqual([
      [true, false],
      [true, false],
    ])
    counted('2026-03-13T06:30:00.000Z', 360, { eggs: 3, females: 60 })
    expect(later('2026-03-13')).toEqual([false, true])
  })

  test('has its air looked at for each of the three signs by itself', () => {
    for (const sign of ['swimming_slow', 'sinking', 'bad_smell'] as const) {
      const { room, looked } = cultureRoom()
      looked('2026-03-09T18:30:00.000Z', sign)
      expect(about(saidSteps(troubles(room)[0]), air), sign).toEqual([true])
    }
  })

  test('of which more eggs were counted than females can carry is none for that', () => {
    const { room, counted } = cultureRoom()
    // Thirty eggs a female are a slip of the pen, and speak for no trouble.
    counted('2026-03-10T06:30:00.000Z', 200, { eggs: 1500, females: 50 })
    expect(troubles(room)).toEqual([])
  })

  test('is rotifers’ alone: algae that smell are looked at as algae', () => {
    const { room, algae } = cultureRoom()
    room.fact('observation', algae.id, '2026-03-09T18:30:00.000Z', { signs: ['bad_smell'] })
    expect(troubles(room)).toEqual([])
  })
})

describe('a crashed culture', () => {
  /** R1 fell from 300 a mL two days ago to so many; R2 may help. */
  function crashed({ left = 5, helper = 200 as number | null, helperL = 18 } = {}) {
    const made = cultureRoom()
    const { room, counted } = made
    counted('2026-03-08T06:30:00.000Z', 300)
    const other = helper === null ? null : room.culture({ name: 'R2', startedAt, isBackup: true, volumeL: helperL })
    if (other) room.count(other, `${date}T06:30:00.000Z`, [helper!, helper!, helper!])
    counted(`${date}T06:30:00.000Z`, left)
    return { ...made, other, asked: () => room.drafts(date, [rotiferRescue]).drafts }
  }

  test('is emptied and begun again within the hour, after the one that helps was seen to, and says why', () => {
    const { asked } = crashed()
    const draft = onlyDraft({ drafts: asked(), gaps: [] })
    expect(draft).toMatchObject({ roundId: 'morning', lateAt: '2026-03-10T08:00:00.000Z' })
    expect(draft.content).toMatchObject({ amountOf: 'R2, sieved', verb: 'restart' })
    expect(saidSteps(draft)).toEqual([
      'See to R2 first, and only then touch R1.',
      'Empty R1 down the drain; disinfect vessel, air stone and tools, rinse, dry.',
      'Fill it with new water, matched, and put the sieved animals in.',
    ])
    expect(draft.content.cautions).toEqual([
      'Never release stock or culture water into the wild.',
      ...disinfectionCautions,
    ])
    expect(whyLines(draft)).toEqual([
      // 5 / 300.
      ...['5 per_mL counted', 'divided by 300 per_mL densest count', 'equals 0.017 share left'],
      ...[expect.stringMatching(/^and 0\.1 share /), 'and 63 per_mL rotifers to start with', 'times 18 L in it'],
      ...['divided by 200 per_mL counted', 'equals 6.3 L to take'],
    ])
    expect(draft.content.fields).toMatchObject([{ name: 'amountL', label: 'Of R2', usual: 6.3, maximum: 18 }])
  })

  test('is given up under a tenth, not at it; under a half, once it is sick, not at that', () => {
    expect([crashed({ left: 29 }).asked().length, crashed({ left: 30 }).asked().length]).toEqual([1, 0])
    const sick = (left: number) => {
      const { asked, looked } = crashed({ left })
      looked('2026-03-09T18:30:00.000Z', 'bad_smell')
      looked(`${date}T06:20:00.000Z`, 'bad_smell')
      return whyLines(asked()[0]).find((line) => line.includes('densest count,'))
    }
    expect(sick(149)).toMatch(/given up under that/)
    expect(sick(150)).toBeUndefined()
    // A tenth of it and more is still alive, and nursed while nothing can take its place.
    expect(sick(30)).toMatch(/given up under that/)
    expect(sick(29)).toMatch(/crashed under that/)
  })

  test('whose helper was thinned since its count says both, and divides by the count alone', () => {
    const { room, asked, other } = crashed()
    room.fact('harvest', other!.id, `${date}T06:40:00.000Z`, { volumeL: 1.8, parts: [{ to: 'drain', volumeL: 1.8 }] })
    expect(whyLines(asked()[0]).slice(-3)).toEqual([
      'divided by 200 per_mL counted',
      'times 0.9 share left after a harvest',
      // 63 x 18 / (180 x 0.9).
      'equals 7 L to take',
    ])
  })

  test('with nobody to help is cleaned all the same, and the reserve or a starter is named', () => {
    const { asked, culture } = crashed({ helper: null })
    const draft = onlyDraft({ drafts: asked(), gaps: [] })
    expect([saidTitle(draft), draft.content.amountOf, draft.content.fields]).toEqual([
      ...['Crashed: clean it and start it again', null, []],
    ])
    expect(saidSteps(draft)).toEqual([
      'See to every other culture first, and only then touch R1.',
      ...[expect.any(String), expect.any(String), expect.stringMatching(/take the chilled reserve, or buy a starter/)],
    ])
    expect(whyLines(draft).at(-1)).toBe('equals no culture to take it from')
    expect(signOff(rotiferRescue, draft).facts).toEqual([
      { kind: 'care', subjectId: culture.id, data: { act: 'restart_culture', litres: 18 } },
    ])
  })

  test('of a thin start is left alone for a week', () => {
    // Half of 5 L of 200: 450,000 in 18 L are 25 a mL, and 50 make an inoculum (ICAR e-course on rotifers).
    const { asked } = crashed({ helperL: 5 })
    expect(saidSteps(asked()[0]).at(-1)).toMatch(/^That is a thin start/)
    expect(saidSteps(asked()[0])).toHaveLength(4)
  })

  test('keeps what was really taken over', () => {
    const { asked, culture, other } = crashed()
    const { facts } = signOff(rotiferRescue, asked()[0]!, { amountL: 5 })
    expect(facts.slice(1)).toEqual([
      {
        ...{ kind: 'harvest', subjectId: other!.id },
        data: { volumeL: 5, parts: [{ to: 'culture', subjectId: culture.id, volumeL: 5 }] },
      },
      // 5 L x 200,000, a tenth lost in the sieve.
      { kind: 'inoculation', subjectId: culture.id, data: { animals: 900_000, fromCultureId: other!.id } },
    ])
  })

  test('that looks sick for a second day names what was seen, and the half from which it is given up', () => {
    const { asked, looked, room } = crashed({ left: 140 })
    expect(asked()).toEqual([])
    looked('2026-03-09T18:30:00.000Z', 'swimming_slow', 'foam')
    looked(`${date}T06:20:00.000Z`, 'bad_smell')
    const why = whyLines(onlyDraft({ drafts: asked(), gaps: [] }))
    expect(why.slice(3, 6)).toEqual([
      ...['and seen swimming slow, foam', 'and seen bad smell', expect.stringMatching(/^and 0\.5 share /)],
    ])
    // Foam alone is watched: a culture is not given up for it.
    room.snapshot.facts = room.snapshot.facts.filter(({ kind }) => kind !== 'observation')
    looked('2026-03-09T18:30:00.000Z', 'foam')
    looked(`${date}T06:20:00.000Z`, 'foam')
    expect(asked()).toEqual([])
  })

  test('is measured by the densest count of all, not by the last ones; one of algae is not measured', () => {
    const { room, algae, counted, asked } = crashed({ left: 40 })
    // 40 of 300 is more than a tenth; of 450, before that, it is not.
    expect(asked()).toEqual([])
    counted('2026-03-05T06:30:00.000Z', 450)
    counted('2026-03-06T06:30:00.000Z', 450)
    const [draft] = asked()
    expect(draft?.content.because[1]).toMatchObject({
      ...{ label: 'densest count', quantity: { value: 450 }, origin: { at: '2026-03-05T06:30:00.000Z' } },
    })
    for (const perMl of [300, 5]) room.count(algae, `${date}T06:${perMl === 5 ? '3' : '2'}0:00.000Z`, [perMl])
    expect(asked().map(({ subjectName }) => subjectName)).toEqual(['R1'])
  })

  test('is over with what was put in after the last count; what was put in with it was counted', () => {
    const { room, culture, asked } = crashed()
    const put = (at: string) => room.fact('inoculation', culture.id, at, { animals: 1e6 })
    put(`${date}T06:00:00.000Z`)
    expect(asked()).toHaveLength(1)
    put(`${date}T06:30:00.000Z`)
    expect(asked()).toHaveLength(1)
    put(`${date}T06:31:00.000Z`)
    expect(asked()).toEqual([])
  })
})
