import type { Me } from '@fryward/shared'
import { screen, waitFor, within } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { AccountPage } from './AccountPage.tsx'

const at = '2026-11-29T07:00:00.000Z'
const me = (part: Partial<Me['user']> = {}): Me => ({
  user: { id: 'ana', name: 'Ana', email: 'ana@example.test', hasSecondFactor: false, ...part },
  ...{ canCreateRooms: false, ownsServer: false, rooms: [] },
})
const session = (id: string, isThisOne: boolean, browser: string) => ({
  ...{ id, isThisOne, browser, address: '192.168.1.20', signedInAt: at, lastSeenAt: at },
})
const ended: string[] = []
const answers = {
  getMe: () => me(),
  listSessions: () =>
    [session('here', true, 'X11'), session('phone', false, 'Mobile')].filter(({ id }) => !ended.includes(id)),
  listMySignIns: () => [
    { id: '1', at, email: 'ana@example.test', address: '203.0.113.9', browser: '', outcome: 'wrong_password' as const },
  ],
}

test('a password is changed, and a refusal stands beside what was typed', async () => {
  let refuse = true
  const detail = 'This is not your password. Check it and try again.'
  const { writes } = answerApi({
    ...answers,
    changePassword: () => (refuse ? { refused: { status: 400, code: 'invalid_input', detail } } : { ok: true }),
  })
  const { user } = renderInRoom(<AccountPage />)
  await user.type(await screen.findByLabelText('The password that you have now'), 'old one')
  await user.type(screen.getByLabelText('The new one'), 'four words to remember')
  await user.click(screen.getByRole('button', { name: 'Change the password' }))
  expect(await screen.findByText(detail)).toBeTruthy()
  refuse = false
  await user.click(screen.getByRole('button', { name: 'Change the password' }))
  expect(await screen.findByText(/signed out everywhere else/)).toBeTruthy()
  const body = { current: 'old one', wanted: 'four words to remember' }
  expect(writes).toEqual([
    { route: 'changePassword', body },
    { route: 'changePassword', body },
  ])
  expect(screen.getByLabelText<HTMLInputElement>('The new one').value).toBe('')
})

test('another browser is signed out, and who tried is listed', async () => {
  answerApi({
    ...answers,
    endSession: ({ params }) => {
      ended.push(params.sessionId)
      return { ok: true }
    },
  })
  const { user } = renderInRoom(<AccountPage />)
  const list = (await screen.findByText('A phone')).closest('ul')!
  expect(within(list).getAllByRole('listitem')).toHaveLength(2)
  await user.click(screen.getByRole('button', { name: /^Sign out A phone/ }))
  await waitFor(() => expect(screen.queryByText('A phone')).toBeNull())
  expect(screen.getByText('Wrong password').closest('li')?.textContent).toContain('from 203.0.113.9')
})

test('a second factor is set up: password, picture and recovery codes, a first code', async () => {
  const uri = 'otpauth://totp/Fryward:ana?secret=ABCDEFGHIJKLMNOP'
  const { writes } = answerApi({
    ...answers,
    getMe: () => me({ hasSecondFactor: writes.some(({ route }) => route === 'confirmSecondFactor') }),
    beginSecondFactor: () => ({ uri, recoveryCodes: ['aaaaa-bbbbb', 'ccccc-ddddd'] }),
    confirmSecondFactor: () => ({ ok: true }),
  })
  const { user } = renderInRoom(<AccountPage />)
  await user.type(await screen.findByLabelText('Your password'), 'my password')
  await user.click(screen.getByRole('button', { name: 'Set up a second factor' }))
  expect(await screen.findByText('ccccc-ddddd')).toBeTruthy()
  expect(screen.getByRole('link', { name: 'open it in one' }).getAttribute('href')).toBe(uri)
  expect(screen.getByRole('img', { name: /authenticator scans/ })).toBeTruthy()
  await user.type(screen.getByLabelText('The code that it shows'), '123456')
  await user.click(screen.getByRole('button', { name: 'Confirm' }))
  expect(await screen.findByRole('button', { name: 'End the second factor' })).toBeTruthy()
  expect(writes.map(({ body }) => body)).toEqual([{ password: 'my password' }, { code: '123456' }])
})
