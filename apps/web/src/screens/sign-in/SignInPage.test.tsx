import { screen } from '@testing-library/react'
import { SearchParamsContext } from 'next/dist/shared/lib/hooks-client-context.shared-runtime.js'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { SignInPage } from './SignInPage.tsx'

const visitor = { name: 'A visitor', email: 'viewer@demo.example', role: 'viewer' as const }
const withDemo = { isClaimed: false, hasDemoRoom: true, demoPeople: [visitor], sendsMail: true, version: '1' }
const forgotten = (
  <SearchParamsContext value={new URLSearchParams('forgot=1')}>
    <SignInPage />
  </SearchParamsContext>
)

test('signing in on a fresh server offers the people of the demo room, and the way to claim', async () => {
  answerApi({ getServer: () => withDemo })
  const { user } = renderInRoom(
    <SearchParamsContext value={new URLSearchParams()}>
      <SignInPage />
    </SearchParamsContext>,
  )
  await user.click(await screen.findByRole('button', { name: 'A visitor' }))
  expect(screen.getByLabelText<HTMLInputElement>('Email').value).toBe('viewer@demo.example')
  expect(screen.getByRole('link', { name: 'Enter the code' }).getAttribute('href')).toBe('/claim')
})

test('whoever forgot asks for a link, and is not told whether there is such an account', async () => {
  const { writes } = answerApi({ getServer: () => withDemo, askForNewPassword: () => ({ ok: true }) })
  const { user } = renderInRoom(forgotten)
  await user.type(await screen.findByLabelText('Email'), 'ana@example.test')
  await user.click(screen.getByRole('button', { name: 'Mail me a link' }))
  expect(await screen.findByText(/If ana@example.test has an account here/)).toBeTruthy()
  expect(writes.map(({ body }) => body)).toEqual([{ email: 'ana@example.test' }])
})

test('where no mail is sent it says who else lets one in', async () => {
  answerApi({ getServer: () => ({ ...withDemo, sendsMail: false }) })
  renderInRoom(forgotten)
  expect(await screen.findByText(/Ask the owner of the server/)).toBeTruthy()
  expect(screen.getByText(/npm run reset-password/)).toBeTruthy()
  expect(screen.queryByRole('button', { name: 'Mail me a link' })).toBeNull()
})
