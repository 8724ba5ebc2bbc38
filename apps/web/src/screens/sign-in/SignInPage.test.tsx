import { screen } from '@testing-library/react'
import { SearchParamsContext } from 'next/dist/shared/lib/hooks-client-context.shared-runtime.js'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { SignInPage } from './SignInPage.tsx'

const visitor = { name: 'A visitor', email: 'viewer@demo.example', role: 'viewer' as const }
const withDemo = { isClaimed: false, hasDemoRoom: true, demoPeople: [visitor], version: '1' }

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
