import { screen } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeRoom } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { OtherSpecies } from './OtherSpecies.tsx'

const room = makeRoom()
const id = 'other-9m-opistognathus-aurifrons'

test('an owner says more of a species without a profile, and where its eggs are tells what its days are counted to', async () => {
  const { writes } = answerApi({ changeOtherSpecies: () => ({ species: 'other-1f-synchiropus-splendidus' }) })
  const { user } = renderInRoom(<OtherSpecies id={id} />, { room })
  expect(screen.getByText(/its eggs are in a mouth, 9 days from eggs to release/)).toBeTruthy()
  await user.click(screen.getByRole('button', { name: 'Change what is known' }))
  const days = await screen.findByLabelText(/^From eggs to release/)
  await user.clear(days)
  await user.type(days, '2.5')
  await user.click(screen.getByRole('button', { name: 'Save' }))
  expect(await screen.findByText(/Say the days from eggs to release, a whole number from 1 to 60/)).toBeTruthy()
  await user.selectOptions(screen.getByLabelText(/^Its eggs are/), 'pelagic')
  await user.clear(screen.getByLabelText(/^From eggs to hatch/))
  await user.type(screen.getByLabelText(/^From eggs to hatch/), '1')
  await user.click(screen.getByRole('button', { name: 'Save' }))
  await screen.findByRole('button', { name: 'Change what is known' })
  expect(writes).toEqual([
    { route: 'changeOtherSpecies', body: { name: 'Opistognathus aurifrons', eggDays: 1, care: 'pelagic' } },
  ])
})

test('whoever does not own the room reads what is known, and a species with a profile says nothing here', () => {
  renderInRoom(<OtherSpecies id={id} />, { room: { ...room, myRole: 'caretaker' } })
  expect(screen.getByText(/No profile of this species yet/)).toBeTruthy()
  expect(screen.queryByRole('button')).toBeNull()
  renderInRoom(<OtherSpecies id="amphiprion-ocellaris" />, { room })
  expect(screen.getAllByText(/No profile of this species yet/)).toHaveLength(1)
})

test('one day is a day', () => {
  renderInRoom(<OtherSpecies id="other-1f-synchiropus-splendidus" />, { room })
  expect(screen.getByText(/1 day from eggs to hatch\./)).toBeTruthy()
})
