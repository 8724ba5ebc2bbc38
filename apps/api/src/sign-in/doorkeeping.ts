import { type Context, type Knock, RoomError } from '@fryward/room'
import type { Database } from '@fryward/store'
import type { knownBrowser } from './known-browser.ts'
import { browserOf, type Passing } from './pass-to-library.ts'

/** What the steps at the door have to hand. */
export type Doorkeeping = Passing & {
  database: Database
  /** Of the server; keys of ours are drawn from it. */
  secret: string
  known: ReturnType<typeof knownBrowser>
  contextFor: () => Context
  forgetSessions: () => void
}

/** Whether somebody typed something wrong, as against a step that could not be taken at all. */
export const isWrong = (error: unknown): boolean =>
  error instanceof RoomError && (error.code === 'not_signed_in' || error.code === 'invalid_input')

export const knockOf = ({ request, known }: Doorkeeping, email: string): Knock => ({
  email,
  address: request.ip,
  browser: browserOf(request),
  isKnown: known.has(request, email),
})
