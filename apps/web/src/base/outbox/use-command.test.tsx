import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { currentQueue } from './queue-state.ts'
import { useCommand } from './use-command.ts'

const params = { roomId: newId(), taskId: newId() }
let undo = () => {}

function Line() {
  const { mutate } = useCommand('undoTask', () => ({ params, body: {} }), {})
  undo = () => mutate(undefined)
  return null
}

test('what is meant from a message that outlived its line, and refused, stands where everybody sees it', async () => {
  const detail = 'This was signed off too long ago to be taken back.'
  answerApi({ undoTask: () => ({ refused: { status: 409, code: 'too_late_to_undo', detail } }) })
  const { show } = renderInRoom(<Line />)
  show(null)
  undo()
  await expect
    .poll(() => currentQueue().refused)
    .toMatchObject([{ command: { route: 'undoTask' }, refusal: { detail } }])
})
