import type { Task } from '@fryward/shared'
import { screen } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeTask, newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { useOneTap } from './use-one-tap.ts'

const Tap = ({ task }: { task: Task }) => {
  const { signOffNow } = useOneTap(task)
  return (
    <button type="button" onClick={signOffNow}>
      Done
    </button>
  )
}
const signOff = () => ({
  ...{ id: newId(), byName: 'Carla', byUserId: 'carla', values: {}, plannedAmount: null, shownAmount: null },
  ...{ doneAt: new Date().toISOString(), receivedAt: new Date().toISOString() },
  ...{ isRepeat: false, isAfterTheFact: false, undoneAt: null },
})

test.each([
  ['is offered where it was open', 'done' as const, 1],
  ['is not offered where its time had passed, and nothing is there to reopen', 'missed' as const, 0],
  ['is not offered where nobody wanted it any more', 'withdrawn' as const, 0],
])('to take a tap back %s', async (_what, state, offered) => {
  const task = makeTask([])
  answerApi({ signOffTask: () => ({ ...task, state, signOffs: [signOff()] }) })
  const { user } = renderInRoom(<Tap task={task} />)
  await user.click(screen.getByRole('button', { name: 'Done' }))
  await screen.findByText(new RegExp(`: ${task.subject.name}$`))
  expect(screen.queryAllByRole('button', { name: 'Undo' })).toHaveLength(offered)
})
