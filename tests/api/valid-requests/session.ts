import { nextCodeOf } from '../authenticator.ts'
import { cookieOf } from '../door.ts'
import { havePassword, theirPassword, withSecondFactor } from './account.ts'
import { invitationOf } from './people.ts'
import { addressFor, type Requests } from './writing.ts'

export const sessionRequests = {
  signIn: async (writing) => {
    const email = `signs-in-${writing.serial}@example.test`
    const { token } = await invitationOf(writing)
    const account = { name: `Signs in ${writing.serial}`, email, password: 'long enough 1' }
    await writing.world.ok(null, 'joinByInvitation', { params: { token }, body: account })
    // From an address of its own: eight tries a minute are what one gets.
    return { body: { email, password: account.password }, remoteAddress: addressFor(writing) }
  },
  signInWithCode: async (writing) => {
    const { email, secret } = await withSecondFactor(writing)
    const answer = await writing.world.app.inject({
      method: 'POST',
      url: '/api/auth/sign-in/email',
      remoteAddress: addressFor(writing),
      headers: { host: 'localhost:3000' },
      payload: { email, password: theirPassword },
    })
    return {
      body: { code: nextCodeOf(secret) },
      headers: { cookie: cookieOf(answer) },
      remoteAddress: addressFor(writing),
    }
  },
  signInAgain: async (writing) => ({ body: { password: await havePassword(writing) } }),
  getSignedInAgain: () => ({}),
  signOut: () => ({ body: {} }),
} satisfies Requests
