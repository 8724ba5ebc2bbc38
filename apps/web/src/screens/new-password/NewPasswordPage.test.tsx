import { screen } from '@testing-library/react'
import { PathParamsContext } from 'next/dist/shared/lib/hooks-client-context.shared-runtime.js'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { NewPasswordPage } from './NewPasswordPage.tsx'

const page = (
  <PathParamsContext value={{ token: 'a-token-of-a-link' }}>
    <NewPasswordPage />
  </PathParamsContext>
)

test('a link says whose password it gives, takes a new one and leads to signing in', async () => {
  const { writes } = answerApi({
    getPasswordReset: () => ({ email: 'ana@example.test', expiresAt: '2026-11-29T09:00:00.000Z' }),
    giveNewPassword: () => ({ ok: true }),
  })
  const { user } = renderInRoom(page)
  expect(await screen.findByDisplayValue('ana@example.test')).toBeTruthy()
  await user.type(screen.getByLabelText(/Your new password/), 'long enough 1')
  await user.click(screen.getByRole('button', { name: 'Take this password' }))
  expect((await screen.findByRole('link', { name: 'Sign in' })).getAttribute('href')).toBe('/sign-in')
  expect(writes.map(({ body }) => body)).toEqual([{ password: 'long enough 1' }])
})

test('a link that is used up says so, with the way to another', async () => {
  const detail = 'This link was used before or is more than an hour old.'
  answerApi({ getPasswordReset: () => ({ refused: { status: 404, code: 'not_found', detail } }) })
  renderInRoom(page)
  expect(await screen.findByText(detail)).toBeTruthy()
  expect(screen.getByRole('link', { name: 'Ask once more' }).getAttribute('href')).toBe('/sign-in?forgot=1')
})
