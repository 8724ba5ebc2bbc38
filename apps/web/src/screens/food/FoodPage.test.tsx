import type { FoodView } from '@fryward/shared'
import { screen, waitFor, within } from '@testing-library/react'
import { describe, expect, it } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeRoom } from '@/testing/made-up.ts'
import { makeFood, withHatch } from '@/testing/made-up-food.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { beAsWideAs } from '@/testing/wide-as.ts'
import { FoodPage } from './FoodPage.tsx'

beAsWideAs(380)

const food = makeFood()
const underWay: FoodView['underWay'] = []
const plan = {
  madeAt: '2026-11-25T06:50:00.000Z',
  revision: 7,
  isStale: false,
  outlook: food.outlook,
  cures: food.cures,
}

async function open(given: Partial<FoodView> = {}, room = makeRoom()) {
  const view: FoodView = { plan, underWay, ...given }
  const { writes } = answerApi({
    getFood: () => view,
    listPairs: () => [],
    askWhatIf: () => ({ before: food.outlook, after: { ...food.outlook, worry: null, shortTotal: 0 } }),
  })
  const page = renderInRoom(<FoodPage />, { room })
  await waitFor(() => screen.getByText(view.plan ? /^As planned/ : 'No plan yet'))
  return { ...page, writes }
}
// The chart's script comes after the page: a busy machine takes its time over it.
const chart = () => waitFor(() => screen.getByRole('img', { name: /^Food and mouths/ }), { timeout: 30_000 })

describe('the page of the food ahead', () => {
  it('says the first day of worry first, and draws it', async () => {
    await open()
    expect(screen.getByText('Friday rotifers may fall short for B1: likely (62%).')).toBeTruthy()
    expect((await chart()).getAttribute('aria-label')).toContain('Friday rotifers may fall short for B1')
    expect(screen.getByText(/^R4: count it/)).toBeTruthy()
  })

  it('of a room with nothing in it asks for a culture and larvae instead of an empty picture', async () => {
    const bare = { ...plan.outlook, cultures: [], eaters: [], gaps: [], worry: null }
    await open({ plan: { ...plan, outlook: bare, cures: [] } })
    expect(screen.getByText('Nothing to plan yet')).toBeTruthy()
    expect(screen.queryByText('The same as a table')).toBeNull()
    expect(screen.getByRole('link', { name: 'Add something' })).toBeTruthy()
  })

  it('names what its marks stand for, the moons too', async () => {
    await open()
    expect(screen.getByText(/^nights on which larvae may hatch/)).toBeTruthy()
  })

  it('tells what a hatch of Artemia gives, and from when until when, in the table too', async () => {
    await open({ plan: { ...plan, outlook: withHatch(food) } })
    expect(screen.getByText(/^hatches of Artemia/)).toBeTruthy()
    expect(screen.getByText(/about 16,000 nauplii, in its cone: out /)).toBeTruthy()
    expect(within(screen.getByRole('table')).getByText('40,000 wanted, 16,000 from H1, 24,000 to hatch')).toBeTruthy()
  })

  it('tells the same as a table, with the nights of hatching', async () => {
    await open()
    const table = screen.getByRole('table')
    expect(within(table).getAllByRole('row')).toHaveLength(5)
    expect(within(table).getByText('70%: Clutch 3')).toBeTruthy()
    expect(within(table).getAllByText('62%')).toHaveLength(2)
  })

  it('shows what a cure makes of it, and goes back', async () => {
    const { user } = await open()
    await chart()
    const cure = screen.getByRole('button', { name: 'Let the backup give what no other can' })
    await user.click(cure)
    expect(cure.getAttribute('aria-pressed')).toBe('true')
    expect((await chart()).getAttribute('aria-label')).toContain('if: Let the backup')
    await user.click(screen.getByRole('button', { name: 'Back to as it is' }))
    expect(cure.getAttribute('aria-pressed')).toBe('false')
    expect((await chart()).getAttribute('aria-label')).toContain('Friday')
  })

  it('asks what if, of what may happen in this room', async () => {
    const { user, writes } = await open()
    await user.selectOptions(screen.getByLabelText('Suppose that'), 'R1 crashes tomorrow')
    await user.click(screen.getByRole('button', { name: 'Show what then' }))
    await waitFor(() => screen.getByText('R1 crashes tomorrow.'))
    expect(writes).toEqual([
      { route: 'askWhatIf', body: { changes: [{ kind: 'culture_crashes', cultureId: food.ids.r1 }] } },
    ])
  })

  it('asks nothing of somebody who only reads', async () => {
    await open({}, makeRoom({ myRole: 'viewer' }))
    expect(screen.queryByText('Show what then')).toBeNull()
    expect(screen.getByRole('button', { name: 'Leave Clutch 3 with its parents' })).toBeTruthy()
  })

  it('says that there is no plan yet, and that a plan is old', async () => {
    await open({ plan: null })
    expect(screen.getByText(/comes within a minute/)).toBeTruthy()
  })
})
