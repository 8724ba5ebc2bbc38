import type { Me, Person, Role } from '@fryward/shared'
import { screen, waitFor, within } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { PeoplePage } from './PeoplePage.tsx'

const at = '2026-11-29T07:00:00.000Z'
const person = (userId: string, name: string, role: Role): Person => ({
  ...{ userId, name, role, email: `${userId}@example.test`, joinedAt: at },
})
const me: Me = {
  user: { id: 'carla', name: 'Carla', email: 'carla@example.test', hasSecondFactor: true },
  ...{ canCreateRooms: true, ownsServer: true, rooms: [] },
}
const again = { refused: { status: 403, code: 'sign_in_again', detail: 'Type your password once more.' } }

function openPage({ isKnown }: { isKnown: () => boolean }) {
  return answerApi({
    getMe: () => me,
    listPeople: () => [person('carla', 'Carla', 'owner'), person('ben', 'Ben', 'viewer')],
    listInvitations: () => [],
    changeRole: ({ body }) => (isKnown() ? person('ben', 'Ben', body.role) : again),
    signInAgain: ({ body }) =>
      body.password === 'my password'
        ? { ok: true }
        : { refused: { status: 400, code: 'invalid_input', detail: 'This is not your password.' } },
  })
}

async function giveBenARole() {
  const { user, show } = renderInRoom(<PeoplePage />)
  await user.selectOptions(await screen.findByLabelText('Role of Ben'), 'caretaker')
  return { user, show, dialog: within(await screen.findByRole('dialog')) }
}

test('a role waits for a password and a code, and is then given as it was meant', async () => {
  const { writes } = openPage({ isKnown: () => writes.filter(({ route }) => route === 'signInAgain').length === 2 })
  const { user, dialog } = await giveBenARole()
  await user.type(dialog.getByLabelText('Your password'), 'not it')
  await user.type(dialog.getByLabelText(/The code/), '123456')
  await user.click(dialog.getByRole('button', { name: 'Go on' }))
  expect(await dialog.findByText('This is not your password.')).toBeTruthy()
  await user.clear(dialog.getByLabelText('Your password'))
  await user.type(dialog.getByLabelText('Your password'), 'my password')
  await user.click(dialog.getByRole('button', { name: 'Go on' }))
  await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull())
  await waitFor(() => expect(writes.at(-1)?.route).toBe('changeRole'))
  expect(writes.at(-1)?.body).toEqual({ role: 'caretaker' })
  expect(writes.at(-2)?.body).toEqual({ password: 'my password', code: '123456' })
})

test('whoever does not type it keeps the page, which says why nothing was changed', async () => {
  const { writes } = openPage({ isKnown: () => false })
  const { user, dialog } = await giveBenARole()
  await user.click(dialog.getByRole('button', { name: 'Cancel' }))
  expect(await screen.findByText('Type your password once more.')).toBeTruthy()
  expect(screen.queryByRole('dialog')).toBeNull()
  expect(writes.map(({ route }) => route)).toEqual(['changeRole'])
})

test('whoever leaves the page is not asked by another one, nor on coming back', async () => {
  const { writes } = openPage({ isKnown: () => false })
  const { show } = await giveBenARole()
  show(null)
  show(<PeoplePage />)
  expect(await screen.findByLabelText('Role of Ben')).toBeTruthy()
  expect(screen.queryByRole('dialog')).toBeNull()
  expect(writes.map(({ route }) => route)).toEqual(['changeRole'])
})

test('the owner of the server makes a link for somebody who forgot their password', async () => {
  answerApi({
    getMe: () => me,
    listPeople: () => [person('carla', 'Carla', 'owner'), person('ben', 'Ben', 'viewer')],
    listInvitations: () => [],
    createResetLink: () => ({ link: 'https://fish.example/new-password/abc', expiresAt: at }),
  })
  const { user } = renderInRoom(<PeoplePage />)
  await user.click(await screen.findByRole('button', { name: /Make a link for Ben/ }))
  expect(await screen.findByDisplayValue('https://fish.example/new-password/abc')).toBeTruthy()
  expect(screen.queryByRole('button', { name: /Make a link for Carla/ })).toBeNull()
})

test('an owner of a room who does not own the server reads whom to ask for a new password', async () => {
  answerApi({
    getMe: () => ({ ...me, ownsServer: false }),
    listPeople: () => [person('carla', 'Carla', 'owner'), person('ben', 'Ben', 'viewer')],
    listInvitations: () => [],
  })
  renderInRoom(<PeoplePage />)
  expect(await screen.findByText(/ask whoever claimed the server/)).toBeTruthy()
  expect(screen.queryByRole('button', { name: /Forgot their password/ })).toBeNull()
})
