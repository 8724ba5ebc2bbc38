import type { Role } from '@fryward/shared'
import type { Person, World } from '../support/world.ts'

export const password = 'a long enough password'

type Way = { address?: string; headers?: Record<string, string> }

/** What somebody does who is not in yet; each try comes from an address of its own, as tries are counted by address. */
export function doorOf(world: World) {
  let lastAddress = 0
  const freshAddress = () => {
    lastAddress += 1
    return `10.1.${Math.floor(lastAddress / 250)}.${(lastAddress % 250) + 1}`
  }
  return {
    freshAddress,
    signIn: (email: string, typed: string, { address = freshAddress(), headers = {} }: Way = {}) =>
      world.app.inject({
        method: 'POST',
        url: '/api/auth/sign-in/email',
        remoteAddress: address,
        headers: { host: 'localhost:3000', origin: 'http://localhost:3000', ...headers },
        payload: { email, password: typed },
      }),
    join: (token: string, email: string, name = `Newcomer ${freshAddress()}`) =>
      world.call(null, 'joinByInvitation', {
        params: { token },
        body: { name, email, password },
        address: freshAddress(),
      }),
    invite: async ({ owner, roomId }: { owner: Person; roomId: string }, role: Role = 'stand_in', daysValid = 7) => {
      const made = await world.ok(owner, 'createInvitation', { params: { roomId }, body: { role, daysValid } })
      return { ...made, token: made.link.split('/').at(-1)! }
    },
  }
}

export const cookieOf = (answer: { cookies: { name: string; value: string }[] }): string =>
  answer.cookies.map(({ name, value }) => `${name}=${encodeURIComponent(value)}`).join('; ')
