import { type HandOver, HandOverSchema } from '@fryward/shared'
import { screen } from '@testing-library/react'
import { expect, it } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { OpenWorries } from './OpenWorries.tsx'

const id = (n: number) => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`
const worry = (n: number, text: string, subject: HandOver['worries'][number]['subject']) => ({
  ...{ id: id(n), at: '2026-11-25T06:00:00Z', byName: 'Ana', text, isWorry: true, subject },
  ...{ settledAt: null, settledByName: null },
})
const tank = { id: id(1), kind: 'tank' as const, name: 'L1' }
const handOver = HandOverSchema.parse({
  ...{ lastLookedAt: null, sinceRevision: 0, revision: 1, since: [], notDone: [], notes: [], signs: [], losses: [] },
  ...{ coming: [], worries: [worry(2, 'The heater clicks', tank), worry(3, 'The pump is loud', null)] },
})

it('stand on Today, all of them, and on the page of the thing that they are about, with who wrote them', async () => {
  answerApi({ getHandOver: () => handOver })
  const { show } = renderInRoom(<OpenWorries />)
  expect(await screen.findByText('The pump is loud')).toBeTruthy()
  expect(screen.getAllByRole('listitem')).toHaveLength(2)
  expect(screen.getAllByText(/Ana/)).toHaveLength(2)
  show(<OpenWorries subjectId={tank.id} />)
  expect(screen.queryByText('The pump is loud')).toBeNull()
  expect(screen.getByText('The heater clicks')).toBeTruthy()
  expect(screen.getByRole('button', { name: 'It is over: The heater clicks' })).toBeTruthy()
})
