import { fireEvent, screen, waitFor, within } from '@testing-library/react'
import { describe, expect, it } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeFood, withHatch } from '@/testing/made-up-food.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { beAsWideAs } from '@/testing/wide-as.ts'
import { flowOf } from './flow-frame.ts'
import { WhoEatsPage } from './WhoEatsPage.tsx'

beAsWideAs(380)

const food = makeFood()
const plan = { madeAt: '2026-11-25T06:50:00.000Z', revision: 7, isStale: true, outlook: food.outlook, cures: [] }

async function open(outlook = food.outlook) {
  answerApi({ getFood: () => ({ plan: { ...plan, outlook }, underWay: [] }) })
  const page = renderInRoom(<WhoEatsPage />)
  await waitFor(() => screen.getByRole('table'))
  return page
}

describe('the page of who eats from what', () => {
  it('says for today who gets how much from where', async () => {
    await open()
    expect(screen.getByText(/the next plan is being worked out/)).toBeTruthy()
    const row = within(screen.getByRole('table')).getByRole('row', { name: /^B1/ })
    expect(row.textContent).toContain('1.2 L of R1, about 300,000')
    expect(row.textContent).not.toContain('missing')
    // The clutch has not hatched: nobody sets a plate for it.
    expect(within(screen.getByRole('table')).getAllByRole('row')).toHaveLength(2)
  })

  it('goes along the days by slider and by button, and says what is missing', async () => {
    const { user } = await open()
    fireEvent.change(screen.getByRole('slider'), { target: { value: '2' } })
    const table = screen.getByRole('table')
    expect(within(table).getByRole('row', { name: /^B1/ }).textContent).toContain('100,000 missing')
    expect(within(table).getByRole('row', { name: /^Clutch 3/ }).textContent).toContain('70% hatched')
    await user.click(screen.getByRole('button', { name: 'A day earlier' }))
    expect(screen.getByRole('slider').getAttribute('aria-valuetext')).toContain('Thursday 26 Nov')
    await waitFor(() => screen.getByRole('img', { name: /^Who eats from what, / }), { timeout: 30_000 })
  })
})

describe('Artemia', () => {
  it('has its own streams and table on days on which somebody eats it', async () => {
    const { user } = await open(withHatch(food))
    expect(screen.getAllByRole('table')).toHaveLength(1)
    await user.click(screen.getByRole('button', { name: 'A day later' }))
    const table = screen.getAllByRole('table')[1]!
    const row = within(table).getByRole('row', { name: /^B1/ })
    expect(row.textContent).toContain('wants 40,000 nauplii')
    expect(row.textContent).toContain('16,000 of H1')
    expect(row.textContent).toContain('24,000 still to be hatched')
    await waitFor(() => screen.getByRole('img', { name: /^Who eats Artemia from what/ }), { timeout: 30_000 })
    expect(screen.getByText('gives 16,000, in its cone')).toBeTruthy()
  })
})

describe('the streams', () => {
  it('are as wide as what flows, and leave a gap where it does not reach', () => {
    const shown = { cultures: [food.ids.r1, food.ids.r2], eaters: [food.ids.batch, food.ids.clutch] }
    const { cultures, eaters, streams } = flowOf(food.outlook.days[2]!, shown, { left: 10, right: 300 })
    expect(streams).toHaveLength(1)
    expect(streams[0]!.width).toBeCloseTo(cultures[0]!.height, 6)
    // Two of three hundred thousand come.
    expect(eaters[0]!.filled / eaters[0]!.height).toBeCloseTo(2 / 3, 6)
    expect(eaters[1]!.y).toBeGreaterThan(eaters[0]!.y + eaters[0]!.height)
  })
})
