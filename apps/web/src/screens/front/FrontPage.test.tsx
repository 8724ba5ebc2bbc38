import type { Me, ServerStatus } from '@fryward/shared'
import { waitFor } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { FrontPage } from './FrontPage.tsx'

const nobody = { refused: { status: 401, code: 'not_signed_in', detail: 'Sign in first.' } }
const ana: Me = {
  user: { id: 'ana', name: 'Ana', email: 'ana@example.test', hasSecondFactor: false },
  ...{ canCreateRooms: true, ownsServer: false, rooms: [] },
}
const visitor = { name: 'A visitor', email: 'viewer@demo.example', role: 'viewer' as const }
const fresh: ServerStatus = { isClaimed: false, hasDemoRoom: false, demoPeople: [], sendsMail: false, version: '1' }
const withDemo: ServerStatus = { ...fresh, hasDemoRoom: true, demoPeople: [visitor] }

test.each([
  ['/claim', 'a fresh server', nobody, fresh],
  ['/sign-in', 'a fresh server with the demo room', nobody, withDemo],
  ['/sign-in', 'a server that has an owner', nobody, { ...fresh, isClaimed: true }],
  ['/rooms', 'anybody who is signed in, claimed or not', ana, withDemo],
])('the bare address leads to %s for %s', async (wanted, _whom, me, server) => {
  answerApi({ getMe: () => me, getServer: () => server })
  const { went } = renderInRoom(<FrontPage />)
  await waitFor(() => expect(went).toEqual([wanted]))
})
