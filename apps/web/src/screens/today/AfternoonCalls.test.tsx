import type { Day } from '@fryward/shared'
import { screen, waitFor, within } from '@testing-library/react'
import { describe, expect, it } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeTask } from '@/testing/made-up.ts'
import { makeFood } from '@/testing/made-up-food.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { AfternoonCalls } from './AfternoonCalls.tsx'
import { FoodWorry } from './FoodWorry.tsx'

const food = makeFood()
const { ids } = food

/** The made-up plan with the clutch as likely as not to hatch tonight. */
const tonight = {
  ...food.outlook,
  eaters: food.outlook.eaters.map((eater) =>
    eater.id === ids.clutch ? { ...eater, nights: [{ date: '2026-11-25', probability: 0.5 }] } : eater,
  ),
}
const day = (tasks: Day['tasks']): Day => ({
  ...{
    date: '2026-11-25',
    today: '2026-11-25',
    rounds: [],
    tasks,
    gaps: [],
    isOpened: true,
    onDuty: null,
    revision: 7,
  },
  lightsOffAt: '2026-11-25T20:00:00.000Z',
})
const answer = (outlook: typeof tonight) => {
  const plan = { madeAt: '2026-11-25T06:50:00.000Z', revision: 7, isStale: false, outlook, cures: [] }
  answerApi({ getFood: () => ({ plan, underWay: [] }) })
}

describe('the afternoon call on Today', () => {
  it('stands there for a clutch that may hatch tonight, and says when to pull its nest as the list does', async () => {
    answer(tonight)
    const subject = { id: ids.clutch, kind: 'clutch' as const, name: 'Clutch 3' }
    const pull = makeTask([], { ruleId: 'clutch-pull-nest', subject, dueAt: '2026-11-25T17:30:00.000Z' })
    renderInRoom(<AfternoonCalls day={day([pull])} />)
    const call = await waitFor(() => screen.getByRole('region', { name: /^Clutch 3 may hatch tonight: likely/ }))
    expect(within(call).getByText('Pull the nest by 17:30, before dark.')).toBeTruthy()
    expect(within(call).getByRole('link', { name: 'Decide' }).getAttribute('href')).toContain(`/clutches/${ids.clutch}`)
  })

  it('is silent of a plan of another day', async () => {
    answer(tonight)
    renderInRoom(
      <>
        <AfternoonCalls day={{ ...day([]), date: '2026-11-26', today: '2026-11-26' }} />
        <FoodWorry />
      </>,
    )
    // What the plan says of the weeks ahead still stands.
    await waitFor(() => screen.getByRole('link', { name: 'What would help' }))
    expect(screen.queryByRole('region')).toBeNull()
  })
})
