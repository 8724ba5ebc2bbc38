import { describe, expect, test } from 'vitest'
import { disinfectionCautions, fishWaterCautions } from '../../task/cautions.ts'
import { saidSteps } from '../../testing/said-steps.ts'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { quarantineAcclimatise } from './quarantine-acclimatise.ts'
import { quarantineArrival } from './quarantine-arrival.ts'
import { quarantineEnd } from './quarantine-end.ts'
import { quarantineWatch } from './quarantine-watch.ts'

const date = '2026-03-10'

function quarantine() {
  const room = new SnapshotBuilder()
  const tank = room.tank({ name: 'Q1', kind: 'quarantine', volumeL: 40, salinity: 33, temperatureC: 25 })
  const came = (at: string, data: { number?: number; litres?: number; salinity?: number } = {}) =>
    room.fact('care', tank.id, at, { act: 'fish_arrived', number: 4, ...data })
  return { room, tank, came }
}

describe('whether fish have come', () => {
  test('is asked last of all, of an empty quarantine tank alone, a week after it was last found empty', () => {
    const { room, tank } = quarantine()
    room.tank({ kind: 'grow_out' })
    const draft = onlyDraft(room.drafts(date, [quarantineArrival]))
    expect([draft.subjectId, draft.roundId]).toEqual([tank.id, 'evening'])
    expect(saidTitle(draft)).toBe('Check whether fish have come')
    expect(draft.content.fields.map(({ name }) => name)).toEqual(['number', 'bagL', 'bagSalinity', 'note'])
    expect(draft.content.fields[0]).toMatchObject({ isRequired: true, likelyMinimum: 0 })
    expect(whyLines(draft)).toEqual(['kind of tank quarantine', expect.stringMatching(/^and 7 days /)])
    room.fact('care', tank.id, '2026-03-03T18:40:00.000Z', { act: 'quarantine_empty' })
    expect(whyLines(room.drafts(date, [quarantineArrival]).drafts[0])[1]).toBe('and last found empty')
    expect(room.drafts('2026-03-09', [quarantineArrival]).drafts).toEqual([])
  })

  test('keeps how many, in how much of what water, and what they are; half a fish is none', () => {
    const { room, tank } = quarantine()
    const draft = onlyDraft(room.drafts(date, [quarantineArrival]))
    const kept = (values: Record<string, unknown>) => signOff(quarantineArrival, draft, values).facts
    const care = (data: object) => [{ kind: 'care', subjectId: tank.id, data }]
    expect(kept({ number: 3, bagL: 2.5, bagSalinity: 30, note: 'Gobies.' })).toEqual(
      care({ act: 'fish_arrived', number: 3, litres: 2.5, salinity: 30, note: 'Gobies.' }),
    )
    expect(kept({ number: 1 })).toEqual(care({ act: 'fish_arrived', number: 1 }))
    expect(kept({ number: 0, bagL: 2, note: 'Post is late.' })).toEqual(
      care({ act: 'quarantine_empty', note: 'Post is late.' }),
    )
  })
})

describe('bringing fish over', () => {
  const asked = (room: SnapshotBuilder, on = date) => room.drafts(on, [quarantineAcclimatise]).drafts

  test('is asked at once, late after half an hour, in the round of their coming; not the day after nor twice', () => {
    const { room, tank, came } = quarantine()
    came(`${date}T11:20:00.000Z`, { litres: 2, salinity: 33 })
    const [draft] = asked(room)
    expect(draft).toMatchObject({
      ...{ roundId: 'morning', dueAt: `${date}T11:20:00.000Z`, lateAt: `${date}T11:50:00.000Z` },
      isForStandIn: true,
    })
    expect(asked(room, '2026-03-11')).toEqual([])
    const { facts } = signOff(quarantineAcclimatise, draft!, { note: 'Calm.', dead: 0 })
    expect(facts).toEqual([{ kind: 'care', subjectId: tank.id, data: { act: 'fish_acclimatised', note: 'Calm.' } }])
    room.append(facts[0]!, { at: `${date}T11:20:00.000Z` })
    expect(asked(room)).toEqual([])
    // More fish the same day are brought over too.
    came(`${date}T16:00:00.000Z`, { litres: 1, salinity: 33 })
    expect(asked(room)).toMatchObject([{ roundId: 'midday' }])
  })

  test('is not asked of fish that are in the tank already, nor of those of before today', () => {
    const { room, came } = quarantine()
    came('2026-03-09T23:59:00.000Z', { litres: 2 })
    expect(asked(room)).toEqual([])
    const { room: atMidnight, came: cameThen } = quarantine()
    cameThen(`${date}T00:00:00.000Z`, { litres: 2 })
    expect(asked(atMidnight)).toHaveLength(1)
    came(`${date}T10:00:00.000Z`)
    expect(asked(room)).toEqual([])
  })

  test('floats a quarter of an hour, then three equal parts ten minutes apart, each half of the bag', () => {
    const { room, came } = quarantine()
    came(`${date}T11:00:00.000Z`, { litres: 3, salinity: 34 })
    const [draft] = asked(room)
    expect(saidTitle(draft)).toBe('Move to the tank’s water')
    expect(draft?.content.fields.map(({ name }) => name)).toEqual(['dead', 'note'])
    expect(saidSteps(draft)).toEqual([
      'Lights low. Float the closed bag for 15 minutes, until it is as warm as the tank (25 degC).',
      expect.stringMatching(/^Open it/),
      'Water of the tank, addition 1 of 3: 1.5 L.',
      'After 10 minutes, addition 2 of 3: 1.5 L more.',
      'After 10 minutes, addition 3 of 3: 1.5 L more.',
      expect.stringMatching(/^After 10 minutes lift them over/),
      expect.stringMatching(/^More than a day on the way/),
      expect.stringMatching(/^Bucket water down the drain/),
    ])
    expect(whyLines(draft)).toEqual([
      '3 L water they came in',
      'and 34 psu its salinity',
      'and 33 psu in Q1',
      'and 15 minutes afloat, closed',
      expect.stringMatching(/^and 3 /),
      'and 10 minutes from one addition to the next',
    ])
    // What is general is said once, at the end.
    expect(draft?.content.cautions).toEqual([
      'Never release stock or culture water into the wild.',
      ...fishWaterCautions,
    ])
  })

  test('follows a room that adds more often: of fish from 37 into 33 each part is three quarters of the bag at four', () => {
    const { room, came } = quarantine()
    room.setting('quarantine-acclimatise', { parameters: { additions: 4, apartMinutes: 5 } })
    came(`${date}T11:00:00.000Z`, { litres: 2, salinity: 37 })
    const steps = saidSteps(asked(room)[0])
    // 4 apart to 1 within four parts: the bag's water four times as much, so three quarters of it each time.
    expect(steps.filter((step) => step.includes('addition'))).toEqual([
      'Water of the tank, addition 1 of 4: 1.5 L.',
      ...[2, 3, 4].map((number) => `After 5 minutes, addition ${number} of 4: 1.5 L more.`),
    ])
  })

  test('of a bag whose salinity nobody read says nothing of it', () => {
    const { room, came } = quarantine()
    came(`${date}T11:00:00.000Z`, { litres: 2 })
    const [draft] = asked(room)
    expect(whyLines(draft).slice(0, 2)).toEqual(['2 L water they came in', 'and 33 psu in Q1'])
    expect(saidSteps(draft).join(' ')).toContain('addition 1 of 3: 1 L.')
  })

  test('writes down the dead as grown fish, and none where none died', () => {
    const { room, tank, came } = quarantine()
    came(`${date}T11:00:00.000Z`, { litres: 2, salinity: 33 })
    const kept = (dead: number) => signOff(quarantineAcclimatise, asked(room)[0]!, { dead }).facts.slice(1)
    expect(kept(1)).toEqual([{ kind: 'loss', subjectId: tank.id, data: { number: 1, of: 'adults' } }])
    expect(kept(0)).toEqual([])
  })
})

describe('watching them', () => {
  test('is asked the day after the last look, and goes by what was written of the tank', () => {
    const { room, tank, came } = quarantine()
    came('2026-03-08T15:00:00.000Z')
    const asked = (on = date) => room.drafts(on, [quarantineWatch]).drafts
    expect(whyLines(asked()[0])).toEqual(['kind of tank quarantine', 'and 1 days from one look to the next'])
    for (const on of ['08', '09'])
      room.fact('observation', tank.id, `2026-03-${on}T18:40:00.000Z`, { signs: ['all_well'] })
    expect(asked('2026-03-09')).toEqual([])
    expect(asked()[0]?.content.because[1]).toMatchObject({
      ...{ label: 'last watched', joins: 'and' },
      origin: { at: '2026-03-09T18:40:00.000Z' },
    })
    room.setting('quarantine-watch', { parameters: { everyDays: 2 } })
    expect([asked().length, asked('2026-03-11').length]).toEqual([0, 1])
  })

  test('asks for signs first, for the dead and of what age, and for a treatment in three words', () => {
    const { room, came } = quarantine()
    came('2026-03-08T15:00:00.000Z')
    const draft = onlyDraft(room.drafts(date, [quarantineWatch]))
    expect(saidTitle(draft)).toBe('Watch the fish')
    const { fields, cautions } = draft.content
    expect(fields.map(({ name }) => name)).toEqual([
      ...['signs', 'dead', 'deadOf', 'product', 'dose', 'prescribedBy', 'note'],
    ])
    expect(fields.map((field) => ('choices' in field ? field.choices.map(({ value }) => value) : null))).toEqual([
      ...[['spots_or_wounds', 'gasping', 'not_eating', 'fighting'], null, ['adults', 'juveniles']],
      ...[null, null, null, null],
    ])
    // What is general stands once, after what is said of medicines.
    expect(cautions.filter((caution) => caution.startsWith('This is general'))).toHaveLength(1)
    expect(cautions.at(-1)).toMatch(/^This is general/)
  })

  test('a death without a sign is no “all well”, a sign without a death no loss', () => {
    const { room, came } = quarantine()
    came('2026-03-08T15:00:00.000Z')
    const draft = onlyDraft(room.drafts(date, [quarantineWatch]))
    const kept = (values: Record<string, unknown>) =>
      signOff(quarantineWatch, draft, values).facts.map(({ kind, data }) => [kind, data])
    expect(kept({ dead: 1 })).toEqual([
      ['observation', { signs: [], note: 'Watched.' }],
      ['loss', { number: 1, of: 'adults' }],
    ])
    expect(kept({ signs: ['fighting', 'spots_or_wounds'] })).toEqual([
      ['observation', { signs: ['spots_or_wounds', 'fighting'], note: '' }],
    ])
    expect(kept({ note: 'Shy.' })).toEqual([['observation', { signs: ['all_well'], note: 'Shy.' }]])
  })

  test('a treatment counts once product, dose and prescriber are all there; two of the three are a note', () => {
    const { room, tank, came } = quarantine()
    came('2026-03-08T15:00:00.000Z')
    const draft = onlyDraft(room.drafts(date, [quarantineWatch]))
    const words = { product: 'bath', dose: '1 mL', prescribedBy: 'Dr Reis' }
    for (const missing of ['product', 'dose', 'prescribedBy'] as const) {
      const { [missing]: _, ...told } = words
      expect(signOff(quarantineWatch, draft, told).facts[1]).toEqual({
        ...{ kind: 'observation', subjectId: tank.id },
        data: { note: `Treatment, not complete: ${Object.values(told).join(', ')}` },
      })
    }
    expect(signOff(quarantineWatch, draft, words).facts[1]?.kind).toBe('treatment')
  })
})

describe('the end of quarantine', () => {
  const asked = (room: SnapshotBuilder, on: string) => room.drafts(on, [quarantineEnd]).drafts

  test('is decided at midday by somebody who knows them, never by a stand-in, and says what it rests on', () => {
    const { room, tank, came } = quarantine()
    came('2026-03-10T15:00:00.000Z')
    const [draft] = asked(room, '2026-04-09')
    expect(draft).toMatchObject({ roundId: 'midday', isForStandIn: false })
    expect(saidTitle(draft)).toBe('Check whether quarantine is over')
    expect(draft?.content.cautions).toEqual(disinfectionCautions)
    expect(whyLines(draft)).toEqual([
      ...[
        'last fish came',
        'and 30 days in quarantine',
        'and 14 days without a sign',
        'and 7 days until it is asked again',
      ],
    ])
    room.fact('loss', tank.id, '2026-03-26T08:00:00.000Z', { number: 1, of: 'adults' })
    // A death on 26 March: two weeks are over on 9 April.
    expect([asked(room, '2026-04-08').length, asked(room, '2026-04-09').length]).toEqual([0, 1])
    expect(whyLines(asked(room, '2026-04-09')[0])[2]).toBe('and last sign of sickness')
  })

  test('is asked again a week after they were kept on, and at once of fish that came since', () => {
    const { room, tank, came } = quarantine()
    came('2026-01-10T15:00:00.000Z')
    room.fact('care', tank.id, '2026-03-10T12:40:00.000Z', { act: 'quarantine_goes_on' })
    expect([asked(room, '2026-03-16').length, asked(room, '2026-03-17').length]).toEqual([0, 1])
    // Kept on for fish of before: these have their own thirty days, and are asked about when those are over.
    const other = quarantine()
    other.room.fact('care', other.tank.id, '2026-03-10T12:40:00.000Z', { act: 'quarantine_goes_on' })
    other.room.setting('quarantine-end', { parameters: { againDays: 60 } })
    other.came('2026-03-10T15:00:00.000Z')
    expect(asked(other.room, '2026-04-09')).toHaveLength(1)
  })

  test('keeps that they are out, or that they stay, and why; out is the first to tap', () => {
    const { room, tank, came } = quarantine()
    came('2026-02-01T15:00:00.000Z')
    const draft = asked(room, date)[0]!
    const [answer] = draft.content.fields
    expect(answer).toMatchObject({ isRequired: true, choices: [{ value: 'moved' }, { value: 'stay' }] })
    const kept = (values: Record<string, unknown>) => signOff(quarantineEnd, draft, values).facts
    const care = (data: object) => [{ kind: 'care', subjectId: tank.id, data }]
    expect(kept({ answer: 'moved', note: 'To G1.' })).toEqual(care({ act: 'quarantine_empty', note: 'To G1.' }))
    expect(kept({ answer: 'stay' })).toEqual(care({ act: 'quarantine_goes_on' }))
    expect(kept({})).toEqual(care({ act: 'quarantine_goes_on' }))
  })
})
