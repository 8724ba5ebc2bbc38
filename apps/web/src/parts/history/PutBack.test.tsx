import { screen, waitFor } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { keepFact, newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { PutBack } from './PutBack.tsx'

const hoursAgo = (hours: number) => new Date(Date.now() - hours * 3_600_000).toISOString()
const subjectId = newId()

test('a record that was struck out today is put back; of an older one nothing is offered', async () => {
  const struck = (hours: number) => ({
    ...keepFact({ kind: 'observation', subjectId, data: { signs: ['all_well'] } }),
    ...{ struckAt: hoursAgo(hours), struckByName: 'Carla', struckReason: 'the wrong tank' },
  })
  const { writes } = answerApi({ restoreFact: () => ({ ...struck(1), struckAt: null }) })
  const { user, show } = renderInRoom(<PutBack key="old" fact={struck(25)} what="Seen" />)
  expect(screen.queryByRole('button')).toBeNull()
  show(<PutBack key="new" fact={struck(1)} what="Seen" />)
  await user.click(screen.getByRole('button', { name: 'It was right: put it back: Seen' }))
  await waitFor(() => expect(writes).toEqual([{ route: 'restoreFact', body: {} }]))
})
