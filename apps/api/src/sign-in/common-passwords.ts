import { createRequire } from 'node:module'
import { RoomError } from '@fryward/room'

// A list from people's leaked passwords of 8 letters and more, in small letters; shorter ones than ours may be are left out.
const list = createRequire(import.meta.url)('popular-passwords') as readonly string[]
const common = new Set(list.filter((password) => password.length >= 10))

/**
 * Refuses a password that is tried first by whoever guesses: one of the 13,600 commonest that are long enough, or a short
 * word over and over. Nothing leaves the server for it. Source of the rule: NIST SP 800-63B (2017), section 5.1.1.2.
 */
export function assertUncommon(password: string, path = 'password'): void {
  const typed = password.toLowerCase()
  const repeated = /^(.{1,9}?)\1+$/u.test(typed)
  if (!repeated && !common.has(typed)) return
  throw new RoomError(
    'invalid_input',
    'This password is among those that are guessed first. Choose another: four words that do not belong together do well.',
    { fields: [{ path, message: 'Give a password that is less common.' }] },
  )
}
