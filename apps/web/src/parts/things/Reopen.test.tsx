import { screen, waitFor } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeRoom, newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { Reopen } from './Reopen.tsx'

const hoursAgo = (hours: number) => new Date(Date.now() - hours * 3_600_000).toISOString()
const thing = { id: newId(), name: 'R1', version: 4 }

test('what ended today is reopened by whoever may end things, as they saw it', async () => {
  const { writes } = answerApi({ reopenThing: () => ({ ...thing, kind: 'culture', version: 5 }) })
  const { user } = renderInRoom(<Reopen {...thing} endedAt={hoursAgo(3)} />)
  await user.click(screen.getByRole('button', { name: 'It has not ended: reopen R1' }))
  await waitFor(() => expect(writes).toEqual([{ route: 'reopenThing', body: { version: 4 } }]))
})

test.each([
  ['a stand-in', hoursAgo(3), 'stand_in'],
  ['an owner a day later', hoursAgo(25), 'owner'],
] as const)('no reopening is offered to %s', (_whom, endedAt, myRole) => {
  renderInRoom(<Reopen {...thing} endedAt={endedAt} />, { room: makeRoom({ myRole }) })
  expect(screen.queryByRole('button')).toBeNull()
})
