import type { Role, Task } from '@fryward/shared'
import { screen } from '@testing-library/react'
import { expect, test } from 'vitest'
import { useToast } from '@/base/ui/toast.tsx'
import { answerApi } from '@/testing/answer-api.ts'
import { makeRoom, makeTask, newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { TaskOutcome } from './TaskOutcome.tsx'

const now = new Date('2026-11-25T07:05:00.000Z')
const at = '2026-11-25T07:00:00.000Z'
const doneBy = (byName: string): Task =>
  makeTask([], {
    state: 'done',
    signOffs: [
      {
        ...{
          id: newId(),
          byName,
          byUserId: byName.toLowerCase(),
          doneAt: at,
          receivedAt: at,
          values: {},
          plannedAmount: null,
          shownAmount: null,
        },
        ...{ isRepeat: false, isAfterTheFact: false, undoneAt: null },
      },
    ],
  })

// Carla is who is signed in.
test.each<[string, string, Role, boolean]>([
  ['their own', 'Carla', 'stand_in', true],
  ['nothing of others', 'Sam', 'stand_in', false],
  ["others' too", 'Sam', 'caretaker', true],
  ['nothing', 'Carla', 'viewer', false],
])('%s is offered to be taken back: by %s, seen by a %s', (_what, byName, myRole, isOffered) => {
  renderInRoom(<TaskOutcome task={doneBy(byName)} now={now} />, { room: makeRoom({ myRole }) })
  expect(screen.queryAllByRole('button', { name: /^Undo/ })).toHaveLength(isOffered ? 1 : 0)
})

/** A deed whose message still offers to undo it. */
function Told({ task }: { task: Task }) {
  const toast = useToast()
  const tell = () => toast({ text: 'Fed: as it was told', action: { label: 'Undo', run: () => undefined } })
  return (
    <>
      <button type="button" onClick={tell}>
        Tell
      </button>
      <TaskOutcome task={task} now={now} />
    </>
  )
}

test('taking back on the line takes the place of the message that offers the same', async () => {
  const task = doneBy('Carla')
  answerApi({ undoTask: () => ({ ...task, state: 'open', signOffs: [] }) })
  const { user } = renderInRoom(<Told task={task} />, { room: makeRoom({ myRole: 'stand_in' }) })
  await user.click(screen.getByRole('button', { name: 'Tell' }))
  await user.click(screen.getByRole('button', { name: /^Undo:/ }))
  await screen.findByText(`Taken back: ${task.subject.name}`)
  expect(screen.queryByText('Fed: as it was told')).toBeNull()
})
