import type { Fact } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { fillAgainstUsual, usualDensities } from './density-fill.ts'

const count = (subjectId: string, perMl: number, struckAt: string | null = null): Fact => ({
  ...{ id: `${subjectId} ${perMl}`, subjectId, subjectKind: 'culture', at: '2026-11-25T07:00:00.000Z' },
  ...{ receivedAt: '2026-11-25T07:00:00.000Z', recordedByName: 'Carla', taskId: null, struckAt },
  ...{ struckByName: null, struckReason: null, revision: 1, kind: 'count' },
  data: { of: 'culture', animals: [perMl / 10, perMl / 10], volumeMl: 0.2, dilution: 2 },
})
const rotifers = (perMl: number) => ({
  kind: 'rotifer' as const,
  densityNow: { perMl, countedAt: '2026-11-25T07:00:00.000Z', isEstimated: false },
})

describe('how full a bucket is drawn', () => {
  it('is its density against the median of its own counts', () => {
    const usual = usualDensities([count('R1', 100), count('R1', 140), count('R1', 500), count('R2', 900)])
    expect(usual.get('R1')).toBe(140)
    expect(fillAgainstUsual(rotifers(70), usual.get('R1'))).toBe(0.5)
  })

  it('goes by its kind until it was counted three times, struck-out counts aside', () => {
    const usual = usualDensities([count('R1', 100), count('R1', 140), count('R1', 500, '2026-11-25T08:00:00.000Z')])
    expect(usual.get('R1')).toBeUndefined()
    expect(fillAgainstUsual(rotifers(300), usual.get('R1'))).toBe(1)
  })

  it('is nothing while nobody has counted', () => {
    expect(fillAgainstUsual({ kind: 'rotifer', densityNow: null }, 100)).toBeNull()
  })
})
