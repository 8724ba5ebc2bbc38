import type { Role, Task } from '@fryward/shared'
import { screen } from '@testing-library/react'
import { expect, test } from 'vitest'
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
