import { type CareKind, type SurvivalStage, SurvivalStageSchema } from '@fryward/shared'
import { screen } from '@testing-library/react'
import { describe, expect, it } from 'vitest'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { StageBars } from './StageBars.tsx'

const stage = (part: Partial<SurvivalStage>): SurvivalStage =>
  SurvivalStageSchema.parse({
    ...{ stage: 'laid', status: 'reached', on: null, ageDays: null, atLeast: null, atMost: null, interval: null },
    ...{ fromStage: null, lost: null, share: null, ofFirst: null, isAboveBook: false, ...part },
  })

const show = (...stages: SurvivalStage[]) => showOf('nest', stages)

function showOf(care: CareKind, stages: SurvivalStage[]) {
  renderInRoom(<StageBars stages={stages} care={care} label="How many made it" />)
  return screen.getAllByRole('listitem').map((item) => ({
    text: item.textContent,
    widths: [...item.querySelectorAll<HTMLElement>('[aria-hidden] > span')].map(({ style }) => style.width),
  }))
}

describe('the bars of a clutch', () => {
  it('are filled as far as is known and hatched as far as it may be, with the same in figures', () => {
    const [hatched, day5, ahead] = show(
      stage({ stage: 'hatched', atLeast: 300, atMost: 300, interval: { lower: 202, upper: 428 } }),
      stage({ stage: 'day_5', atLeast: 120, atMost: 240 }),
      stage({ stage: 'settled', status: 'not_yet' }),
      stage({ stage: 'placed', status: 'not_yet' }),
    )
    expect(hatched).toEqual({ text: 'Hatched300 (counting: 202 to 428)', widths: ['100%'] })
    expect(day5).toEqual({ text: 'Day 5120 to 240', widths: ['40%', '40%'] })
    expect(ahead).toEqual({ text: 'not yet: settled, placed or kept', widths: [] })
  })

  it('never show a share without its interval, and say when a count is off', () => {
    const share = { share: 0.6, lower: 0.49, upper: 0.7, of: 80 }
    const [settled] = show(
      stage({ stage: 'settled', atLeast: 48, atMost: 48, fromStage: 'hatched', share, isAboveBook: true }),
    )
    expect(settled?.text).toBe('Settled48 60% (49 to 70%) of hatched more than there can have been: a count is off')
  })

  it('of young that a parent carried are counted from their release on', () => {
    const share = { share: 0.8, lower: 0.65, upper: 0.9, of: 45 }
    const bars = showOf('mouth', [
      stage({ atLeast: 45, atMost: 45 }),
      stage({ stage: 'hatched', atLeast: 36, atMost: 36, fromStage: 'laid', share }),
      stage({ stage: 'day_5', atLeast: 30, atMost: 30, fromStage: 'hatched', share }),
      stage({ stage: 'settled', status: 'not_yet' }),
    ])
    expect(bars.map(({ text }) => text)).toEqual([
      'Brood45',
      'Released36 80% (65 to 90%) of brood',
      'Day 530 80% (65 to 90%) of released',
      'not yet: in grow-out',
    ])
  })
})
