import { type Deed, deeds, type Title, type TitleDetail } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { sayPieces } from '../phrases/pieces.ts'
import { patterns } from './patterns.ts'
import { amountPlace, sayTitle, sayWholeTitle, titlePieces } from './say-title.ts'

const voice = { units: 'metric', locale: 'en-GB' } as const
const title = (deed: Deed, parts: Partial<Title> = {}): Title => ({
  ...{ deed, amount: null, thing: null, from: null, to: [], details: [] },
  ...parts,
})
const say = (deed: Deed, parts: Partial<Title> = {}) => sayTitle(title(deed, parts), voice)
const litres = (value: number) => ({ value, unit: 'L' }) as const

describe('a task’s title', () => {
  it('says number, thing and which feed it is', () => {
    const details: TitleDetail[] = [
      { kind: 'feed', number: 2, of: 3 },
      { kind: 'with', words: 'walls brushed' },
    ]
    expect(say('give', { amount: { value: 2.6, unit: 'mL' }, thing: 'concentrate', details })).toBe(
      '2.6 mL concentrate, second feed, walls brushed',
    )
  })

  it('says where what is taken goes, and what else is done behind a semicolon', () => {
    const to = [{ name: 'Larvae, 18 Nov' }, { way: 'other_fish' } as const]
    const details: TitleDetail[] = [{ kind: 'with', words: 'new water in' }]
    expect(say('take_out', { amount: litres(3.2), to, details })).toBe(
      '3.2 L out: Larvae, 18 Nov, other fish; new water in',
    )
    expect(say('move', { to: [{ name: 'G1' }], details: [{ kind: 'with', words: 'counted' }] })).toBe(
      'Move to G1, counted',
    )
  })

  it('says heads without a unit of their own, dates and times as the room writes them', () => {
    const details: TitleDetail[] = [{ kind: 'amount', quantity: { value: 160_000, unit: 'animals' }, of: 'rotifers' }]
    expect(say('give_from', { amount: { value: 640, unit: 'mL' }, from: 'R1', details })).toBe(
      '640 mL of R1, sieved, 160,000 rotifers',
    )
    const american = { units: 'us', locale: 'en-US' } as const
    const cysts = title('give', {
      ...{ amount: { value: 1.5, unit: 'g' }, thing: 'cysts' },
      details: [{ kind: 'for_feeds_of', date: '2026-11-26' }],
    })
    expect(sayTitle(cysts, american)).toBe('1.5 g cysts, for the feeds of Thu, Nov 26')
    const light = title('check', { thing: 'the timers', details: [{ kind: 'hours', from: '08:00', to: '20:30' }] })
    expect(sayTitle(light, american)).toBe('Check the timers: 8:00\u00a0am to 8:30\u00a0pm')
    expect(sayTitle(light, voice)).toBe('Check the timers: 08:00 to 20:30')
  })

  it('says a chance in words with its number', () => {
    const tonight = (probability: number) =>
      say('pull', { thing: 'the nest', details: [{ kind: 'tonight', probability }] })
    expect([0.9, 0.62, 0.2, 0.05].map(tonight)).toEqual([
      'Pull the nest: tonight almost certain (90%)',
      'Pull the nest: tonight likely (62%)',
      'Pull the nest: tonight possible (20%)',
      'Pull the nest: tonight unlikely (5%)',
    ])
  })

  it('names its vessel where nothing above does', () => {
    expect(sayWholeTitle(title('brush', { thing: 'the walls' }), { name: 'R2' }, voice)).toBe('R2: Brush the walls')
  })

  it('shows its amount as a piece of its own, whose words are the whole sentence', () => {
    const given = title('give', { amount: litres(20), thing: 'new water' })
    const pieces = titlePieces(given, voice)
    expect(pieces[0]).toMatchObject({ name: 'amount', quantity: litres(20) })
    expect(sayPieces(pieces, voice)).toBe('20 L new water')
    expect(amountPlace(given, litres(20))).toBe('amount')
    expect(amountPlace(title('what_hatched'), litres(20))).toBeUndefined()
  })

  it('of a task kept as one sentence is that sentence, its amount found by its value', () => {
    const kept = { text: '{amount} out: L4, {rest} to other fish', quantities: { amount: litres(2), rest: litres(1) } }
    expect(sayTitle(kept, voice)).toBe('2 L out: L4, 1 L to other fish')
    expect(amountPlace(kept, litres(1))).toBe('rest')
    expect(amountPlace(kept, litres(3))).toBeUndefined()
  })

  it('reads as a sentence for every deed, with nothing left open', () => {
    for (const deed of deeds) {
      const parts = { amount: litres(2), thing: 'the thing', from: 'R1', to: [{ name: 'R2' }] }
      const used = Object.entries(parts).filter(([name]) => patterns[deed].includes(`{${name}}`))
      expect(say(deed, Object.fromEntries(used)), deed).toMatch(/^[^\s{}][^{}]*[^\s{}]$/)
    }
  })
})
