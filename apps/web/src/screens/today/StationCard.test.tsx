import type { Task } from '@fryward/shared'
import { screen } from '@testing-library/react'
import { expect, it } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeTask, newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { StationCard } from './StationCard.tsx'

const at = (time: string) => new Date(`2026-11-25T${time}:00Z`)
const of = (name: string, part: Partial<Task> = {}) =>
  makeTask([], { subject: { id: newId(), kind: 'pair', name }, ...part })
const doneAt = (doneAt: string): Partial<Task> => ({
  state: 'done',
  signOffs: [
    {
      ...{ id: newId(), byName: 'Carla', byUserId: 'carla', doneAt, receivedAt: doneAt, values: {} },
      ...{ shownAmount: null, isRepeat: false, isAfterTheFact: false, undoneAt: null },
    },
  ],
})
const card = (tasks: Task[], time: string, isLate: string[] = []) => (
  <StationCard group={{ station: 'live_food', tasks }} now={at(time)} isLate={new Set(isLate)} />
)
const namesShown = () => screen.getAllByRole('listitem').map((line) => line.textContent?.slice(0, 2))

it('keeps vessels that were seen to before it was opened in one line, which opens where they stand', async () => {
  answerApi({})
  const tasks = [of('R1', doneAt('2026-11-25T07:02:00Z')), of('R2'), of('R3', doneAt('2026-11-25T07:04:00Z'))]
  const { user } = renderInRoom(card(tasks, '09:00'))
  expect(namesShown()).toEqual(['R2'])
  screen.getByText('Seen to: R1, R3')
  await user.click(screen.getByRole('button', { name: 'Show what is seen to at rotifers and live food' }))
  expect(namesShown()).toEqual(['R1', 'R2', 'R3'])
  await user.click(screen.getByRole('button', { name: 'Fold what is seen to at rotifers and live food' }))
  expect(namesShown()).toEqual(['R2'])
})

it('moves nothing under the thumb: what is finished here stays, and what begins again comes back', () => {
  answerApi({})
  const [r1, r2, r3] = [of('R1', doneAt('2026-11-25T07:02:00Z')), of('R2'), of('R3')]
  const { show } = renderInRoom(card([r1, r2, r3], '09:00'))
  expect(namesShown()).toEqual(['R2', 'R3'])
  show(card([r1, { ...r2, ...doneAt('2026-11-25T09:00:00Z') }, r3], '09:20'))
  expect(namesShown()).toEqual(['R2', 'R3'])
  show(card([{ ...r1, state: 'open', signOffs: [] }, r2, r3], '09:21'))
  expect(namesShown()).toEqual(['R1', 'R2', 'R3'])
})

it('shows a stop whole that is seen to as a whole', () => {
  answerApi({})
  renderInRoom(card([of('R1', doneAt('2026-11-25T07:02:00Z')), of('R2', doneAt('2026-11-25T07:04:00Z'))], '09:00'))
  expect(namesShown()).toEqual(['R1', 'R2'])
})

it('says of none of which a late task stands above that it is seen to', () => {
  answerApi({})
  const [r1, r3] = [of('R1', doneAt('2026-11-25T07:02:00Z')), of('R3', doneAt('2026-11-25T07:04:00Z'))]
  renderInRoom(card([r1, of('R2'), r3], '09:00', [r3.subject.id]))
  screen.getByText('Seen to: R1')
  expect(namesShown()).toEqual(['R2', 'R3'])
})
