import { screen } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { Losses } from './Losses.tsx'

const now = new Date('2026-11-25T12:00:00.000Z')
const batch = { id: '01900000-0000-7000-8000-000000000001', kind: 'larval_batch' as const, name: 'Ponies' }

test.each([
  ['nest', '7 larvae dead'],
  ['pelagic', '7 larvae dead'],
  ['pouch', '7 young dead'],
  ['mouth', '7 young dead'],
] as const)('of a batch whose eggs were kept in a %s there are %s', (care, says) => {
  answerApi({})
  const loss = { subject: batch, of: 'larvae' as const, care, number: 7, at: '2026-11-25T07:00:00Z', byName: 'Ben' }
  renderInRoom(<Losses losses={[loss]} now={now} />)
  expect(screen.getByText(says)).toBeTruthy()
})
