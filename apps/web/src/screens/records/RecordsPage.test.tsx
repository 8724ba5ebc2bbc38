import { screen, waitFor, within } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeRoom, newId } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { RecordsPage } from './RecordsPage.tsx'

const lines = [
  { line: 2, text: '2026-03-10,R1,60', thing: 'R1', date: '2026-03-10', problem: null },
  {
    line: 3,
    text: '2026-03-10,R9,60',
    thing: null,
    date: '2026-03-10',
    problem: 'Nothing in this room is called "R9".',
  },
]
const file = () =>
  new File(['date,thing,samples\n2026-03-10,R1,60\n2026-03-10,R9,60\n'], 'counts.csv', { type: 'text/csv' })

test('a file is looked at line by line, then kept, then taken back as one', async () => {
  const id = newId()
  const { writes } = answerApi({
    previewImport: () => ({ lines, good: 1, note: null }),
    importCounts: () => ({ id, kept: 1, lines, note: null }),
    undoImport: () => ({ struck: 1 }),
  })
  const { user } = renderInRoom(<RecordsPage />)
  await user.upload(screen.getByLabelText('Choose a file'), file())
  expect(await screen.findByText('1 of 2 lines can be kept.')).toBeTruthy()
  const list = within(screen.getByRole('list', { name: 'Lines of the file' }))
  expect(list.getByText('left out: Nothing in this room is called "R9".')).toBeTruthy()
  expect(writes.map(({ route }) => route)).toEqual(['previewImport'])
  await user.click(screen.getByRole('button', { name: 'Keep 1 count' }))
  await user.click(await screen.findByRole('button', { name: 'Take them all back' }))
  expect(await screen.findByText('Taken back: 1 struck out.')).toBeTruthy()
  await waitFor(() => expect(writes.map(({ route }) => route)).toEqual(['previewImport', 'importCounts', 'undoImport']))
  expect(writes[1]?.body).toEqual(writes[0]?.body)
})

test('an owner takes out a file for each kind of record, with the decimal mark of the room', async () => {
  answerApi({})
  const { room } = renderInRoom(<RecordsPage />, { room: makeRoom({ locale: 'de-DE' }) })
  const link = screen.getByRole('link', { name: 'Counts' })
  expect(link.getAttribute('href')).toMatch(
    new RegExp(
      `^/api/v1/rooms/${room.id}/exports/counts\\?from=\\d{4}-\\d\\d-\\d\\d&to=\\d{4}-\\d\\d-\\d\\d&decimal=comma$`,
    ),
  )
})

test('whoever may neither take out nor bring in is told who may', () => {
  answerApi({})
  renderInRoom(<RecordsPage />, { room: makeRoom({ myRole: 'stand_in' }) })
  expect(screen.getByText(/An owner takes records out/)).toBeTruthy()
  expect(screen.queryByRole('link')).toBeNull()
})
