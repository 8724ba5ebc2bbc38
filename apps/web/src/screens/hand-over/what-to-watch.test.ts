import { type HandOver, HandOverSchema } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { whatToWatch } from './what-to-watch.ts'

const id = (n: number) => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`
const subject = { id: id(1), kind: 'clutch' as const, name: 'C1' }
const today = '2026-11-25'

const handOverOf = (part: Partial<HandOver>): HandOver =>
  HandOverSchema.parse({
    lastLookedAt: null,
    sinceRevision: 0,
    revision: 1,
    since: [],
    notDone: [],
    worries: [],
    notes: [],
    signs: [],
    losses: [],
    coming: [],
    ...part,
  })

const night = (date: string, probability: number) => ({ subject, care: 'nest' as const, date, probability })
const sign = (name: string, at: string) => ({ factId: id(2), at, byName: 'Ana', subject, signs: [name], note: null })
const worry = (n: number, at: string) => ({
  id: id(n),
  at,
  byName: 'Ana',
  text: 'The pump is loud',
  isWorry: true,
  subject: null,
  settledAt: null,
  settledByName: null,
})

describe('the one thing to watch', () => {
  it('is a hatch that is likely tonight before anything else', () => {
    const handOver = handOverOf({
      coming: [night(today, 0.62)],
      signs: [sign('gasping', '2026-11-25T07:00:00Z')],
      worries: [worry(3, '2026-11-25T07:00:00Z')],
    })
    expect(whatToWatch(handOver, today)).toMatchObject({ kind: 'hatch', of: { probability: 0.62 } })
  })

  it('is a grave sign before a worry, and the newest worry before an unlikely hatch', () => {
    const worries = [worry(3, '2026-11-24T07:00:00Z'), worry(4, '2026-11-25T07:00:00Z')]
    const coming = [night('2026-11-26', 0.8)]
    const signs = [sign('ciliates', '2026-11-25T07:00:00Z')]
    expect(whatToWatch(handOverOf({ worries, coming, signs }), today)).toMatchObject({ kind: 'sign' })
    expect(whatToWatch(handOverOf({ worries, coming }), today)).toMatchObject({ kind: 'worry', of: { id: id(4) } })
  })

  it('is the likeliest night when nobody worries', () => {
    const coming = [night(today, 0.2), night('2026-11-26', 0.7)]
    const signs = [sign('foam', '2026-11-25T07:00:00Z')]
    expect(whatToWatch(handOverOf({ coming, signs }), today)).toMatchObject({ kind: 'hatch', of: { probability: 0.7 } })
  })

  it('is a skipped larval feed before the dead, and both before a distant hatch: above neither does nothing stand out', () => {
    const batch = { id: id(5), kind: 'larval_batch' as const, name: 'L1' }
    const title = { deed: 'give' as const, amount: null, thing: 'Artemia', from: null, to: [], details: [] }
    const skipped = {
      ...{ taskId: id(6), title, subject: batch, state: 'skipped' as const, isLate: false },
      ...{ dueAt: '2026-11-25T07:00:00Z', reason: 'No time', byName: 'Ben' },
    }
    const losses = [
      {
        subject: batch,
        of: 'larvae' as const,
        care: 'nest' as const,
        number: 7,
        at: '2026-11-25T07:00:00Z',
        byName: 'Ben',
      },
    ]
    const coming = [night('2026-11-27', 0.4)]
    expect(whatToWatch(handOverOf({ notDone: [skipped], losses, coming }), today)).toMatchObject({ kind: 'undone' })
    expect(whatToWatch(handOverOf({ losses, coming }), today)).toMatchObject({ kind: 'loss', of: { number: 7 } })
    const filter = { ...skipped, subject: { ...batch, kind: 'tank' as const } }
    expect(whatToWatch(handOverOf({ notDone: [filter] }), today)).toMatchObject({ kind: 'undone' })
  })

  it('is nothing when nothing stands out', () => {
    expect(whatToWatch(handOverOf({}), today)).toBeUndefined()
  })
})
