import { createApi } from '@fryward/api'
import { parseSettings, resetPassword } from '@fryward/standalone'
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'
import { codeOf, nextCodeOf, secretIn } from './authenticator.ts'
import { cookieOf, doorOf, password } from './door.ts'

let world: World
let owner: Person
let roomId: string
let door: ReturnType<typeof doorOf>
let serial = 0

beforeAll(async () => {
  world = await openWorld()
  door = doorOf(world)
  const opened = await openRoom(world)
  owner = opened.owner
  roomId = opened.room.id
})
afterAll(() => world.close())
// What was guessed in one test is over in the next.
beforeEach(() => world.clock.advanceMinutes(16))

/** Somebody who joined by an invitation; each `browser` is signed in anew. */
async function newcomer() {
  serial += 1
  const email = `account-${serial}@example.test`
  const joined = await door.join((await door.invite({ owner, roomId }, 'caretaker')).token, email)
  expect(joined.status).toBe(201)
  const browser = async (typed = password): Promise<Person> => {
    const answer = await door.signIn(email, typed, { headers: { 'user-agent': 'A phone of theirs' } })
    expect(answer.statusCode, answer.body).toBe(200)
    return { userId: '', name: '', email, cookie: cookieOf(answer) }
  }
  return { email, browser }
}

const isIn = async (person: Person) => (await world.call(person, 'getMe')).status === 200
const secondStep = (cookie: string, code: string, address = door.freshAddress()) =>
  world.app.inject({
    method: 'POST',
    url: '/api/auth/sign-in/code',
    remoteAddress: address,
    headers: { host: 'localhost:3000', origin: 'http://localhost:3000', cookie },
    payload: { code },
  })

describe('a password', () => {
  test('is changed by who knows it, which signs them out everywhere else', async () => {
    const { email, browser } = await newcomer()
    const [here, there] = [await browser(), await browser()]
    const wrong = { current: 'not my password', wanted: 'quite another password' }
    const refused = await world.call(here, 'changePassword', { body: wrong, address: door.freshAddress() })
    expect(refused.problem).toMatchObject({
      code: 'invalid_input',
      detail: expect.stringContaining('not your password'),
    })
    expect([await isIn(here), await isIn(there)]).toEqual([true, true])
    await world.ok(here, 'changePassword', { body: { ...wrong, current: password }, address: door.freshAddress() })
    expect([await isIn(here), await isIn(there)]).toEqual([true, false])
    expect((await door.signIn(email, password)).statusCode).toBe(401)
    await browser('quite another password')
  })

  test.each(['1234567890', 'Password123', 'qwertyuiop', 'aaaaaaaaaaaa', 'passwordpassword', 'abcabcabcabc'])(
    'is not %s, which is guessed first, wherever one is chosen',
    async (common) => {
      const { token } = await door.invite({ owner, roomId })
      const joined = await world.call(null, 'joinByInvitation', {
        params: { token },
        body: { name: 'Easy', email: 'easy@example.test', password: common },
        address: door.freshAddress(),
      })
      expect(joined.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'password' }] })
      const me = await (await newcomer()).browser()
      const body = { current: password, wanted: common }
      const changed = await world.call(me, 'changePassword', { body, address: door.freshAddress() })
      expect(changed.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'wanted' }] })
      expect(await world.database.prisma.user.count({ where: { email: 'easy@example.test' } })).toBe(0)
    },
  )
})

test('the command on the server gives an account a new password, signs it out and takes its second factor off', async () => {
  const { email, browser } = await newcomer()
  const me = await browser()
  const { id } = await world.database.prisma.user.update({ where: { email }, data: { twoFactorEnabled: true } })
  await world.database.prisma.twoFactor.create({ data: { id, userId: id, secret: 'a secret', backupCodes: 'x' } })
  const said = vi.spyOn(console, 'log').mockReturnValue()
  const settings = parseSettings({ DATABASE_URL: world.database.connectionString, DATA_DIR: world.photosFolder }, '/')
  await resetPassword(settings, email.toUpperCase())
  const told = said.mock.calls.flat().join(' ')
  said.mockRestore()
  const [typed] = /([A-Z2-9]{4}-){3}[A-Z2-9]{4}/.exec(told) ?? []
  expect(told).toContain('second factor')
  await expect.poll(() => isIn(me)).toBe(false)
  expect((await door.signIn(email, password)).statusCode).toBe(401)
  expect((await door.signIn(email, typed ?? '')).json()).toEqual({ ok: true, asksCode: false })
  expect(await world.database.prisma.twoFactor.count({ where: { userId: id } })).toBe(0)
  await expect(resetPassword(settings, 'nobody@example.test')).rejects.toThrow('no account with the email')
})

describe('sessions', () => {
  test('are listed for their own person, with where they came from, and ended one by one or all but this', async () => {
    const { browser } = await newcomer()
    const [here, phone, desk] = [await browser(), await browser(), await browser()]
    const sessions = await world.ok(here, 'listSessions')
    expect(sessions).toHaveLength(3)
    expect(sessions.filter((each) => each.isThisOne)).toHaveLength(1)
    for (const each of sessions)
      expect(each).toMatchObject({ browser: 'A phone of theirs', address: expect.any(String) })
    expect(JSON.stringify(sessions)).not.toContain(decodeURIComponent(phone.cookie).split('=')[1]!.split('.')[0])
    const phones = (await world.ok(phone, 'listSessions')).find((each) => each.isThisOne)!
    await world.ok(here, 'endSession', { params: { sessionId: phones.id } })
    expect([await isIn(here), await isIn(phone), await isIn(desk)]).toEqual([true, false, true])
    await world.ok(here, 'endOtherSessions')
    expect([await isIn(here), await isIn(desk)]).toEqual([true, false])
  })

  test("of somebody else are nobody's to end", async () => {
    const [one, other] = [await (await newcomer()).browser(), await (await newcomer()).browser()]
    const theirs = (await world.ok(other, 'listSessions'))[0]!
    const answer = await world.call(one, 'endSession', { params: { sessionId: theirs.id } })
    expect(answer.problem?.code).toBe('not_found')
    expect(await isIn(other)).toBe(true)
  })

  test('end in every process: another one that has just let the browser in soon does no more', async () => {
    const { browser } = await newcomer()
    const [here, there] = [await browser(), await browser()]
    const app = await createApi({
      database: world.database,
      authSecret: 'a secret for tests only, long enough for the schema',
      publicUrl: 'http://localhost:3000',
      version: 'test',
    })
    const status = async () =>
      (await app.inject({ url: '/api/v1/me', headers: { host: 'localhost:3000', cookie: there.cookie } })).statusCode
    expect(await status()).toBe(200)
    await world.ok(here, 'endOtherSessions')
    await expect.poll(status).toBe(401)
    await app.close()
  })
})

describe('a second factor', () => {
  async function withFactor() {
    const { email, browser } = await newcomer()
    const me = await browser()
    const begun = await world.ok(me, 'beginSecondFactor', { body: { password }, address: door.freshAddress() })
    return { email, me, begun, secret: secretIn(begun.uri) }
  }
  /** Set up and confirmed; the session of the set-up is another one afterwards. */
  async function confirmed() {
    const made = await withFactor()
    const answer = await world.call(made.me, 'confirmSecondFactor', {
      body: { code: codeOf(made.secret) },
      address: door.freshAddress(),
    })
    expect(answer.status, answer.problem?.detail).toBe(200)
    return made
  }

  test('counts once a code of it was confirmed, and from then on a password alone opens nothing', async () => {
    const { email, me, secret } = await withFactor()
    expect((await door.signIn(email, password)).json()).toEqual({ ok: true, asksCode: false })
    const wrong = await world.call(me, 'confirmSecondFactor', {
      body: { code: '000000' },
      address: door.freshAddress(),
    })
    expect(wrong.problem?.code).toBe('invalid_input')
    await world.ok(me, 'confirmSecondFactor', { body: { code: codeOf(secret) }, address: door.freshAddress() })
    const half = await door.signIn(email, password)
    expect(half.json()).toEqual({ ok: true, asksCode: true })
    const person = { userId: '', name: '', email, cookie: cookieOf(half) }
    expect(await isIn(person)).toBe(false)
    expect((await secondStep(person.cookie, '000000')).json()).toMatchObject({ code: 'invalid_input' })
    // The code that confirmed it was typed once, and is good once.
    expect((await secondStep(person.cookie, codeOf(secret))).json().detail).toContain('each is good once')
    const whole = await secondStep(person.cookie, nextCodeOf(secret))
    expect(whole.statusCode, whole.body).toBe(200)
    expect(await isIn({ ...person, cookie: cookieOf(whole) })).toBe(true)
    // One code for one sign-in begun: the first step is used up.
    expect((await secondStep(person.cookie, nextCodeOf(secret))).json()).toMatchObject({ code: 'not_signed_in' })
  })

  test('lets one of two in who type the same code at the same moment', async () => {
    const { email, secret } = await confirmed()
    const halves = [await door.signIn(email, password), await door.signIn(email, password)]
    const answers = await Promise.all(halves.map((half) => secondStep(cookieOf(half), nextCodeOf(secret))))
    expect(answers.map(({ statusCode }) => statusCode).sort()).toEqual([200, 400])
    const { rows } = await world.database.pool.query<{ text: string }>('SELECT c::text AS text FROM used_code c')
    for (const { text } of rows) expect(text).not.toContain(nextCodeOf(secret))
  })

  test('that nobody set up takes no recovery code, and says so', async () => {
    const me = await (await newcomer()).browser()
    const body = { code: 'a-recovery-code' }
    const { problem } = await world.call(me, 'confirmSecondFactor', { body, address: door.freshAddress() })
    expect(problem).toMatchObject({ code: 'wrong_state', detail: expect.stringContaining('no recovery codes') })
  })

  test('has recovery codes, each good once; it is ended by the password', async () => {
    const { email, begun } = await confirmed()
    const [code] = begun.recoveryCodes
    const first = await door.signIn(email, password)
    const inside = await secondStep(cookieOf(first), code!)
    expect(inside.statusCode, inside.body).toBe(200)
    const again = await secondStep(cookieOf(await door.signIn(email, password)), code!)
    expect(again.json()).toMatchObject({ code: 'invalid_input' })
    const me = { userId: '', name: '', email, cookie: cookieOf(inside) }
    const end = (typed: string) =>
      world.call(me, 'endSecondFactor', { body: { password: typed }, address: door.freshAddress() })
    expect((await end('not my password')).problem?.code).toBe('invalid_input')
    expect((await end(password)).status).toBe(200)
    expect((await door.signIn(email, password)).json()).toEqual({ ok: true, asksCode: false })
  })

  test('nothing of it can be read in the database or a kept answer', async () => {
    const { secret, begun } = await confirmed()
    const { rows } = await world.database.pool.query<{ text: string }>(
      'SELECT f::text AS text FROM two_factor f UNION ALL SELECT k::text FROM idempotency_key k',
    )
    for (const { text } of rows) for (const told of [secret, ...begun.recoveryCodes]) expect(text).not.toContain(told)
  })

  test('is asked of owners where the room says so, and only by an owner who has one', async () => {
    const { email, me } = await withFactor()
    const { id } = await world.database.prisma.user.findUniqueOrThrow({ where: { email } })
    await world.ok(owner, 'changeRole', { params: { roomId, userId: id }, body: { role: 'owner' } })
    const { version } = await world.ok(owner, 'getRoom', { params: { roomId } })
    const ask = (person: Person, asksSecondFactor: boolean, seen = version) =>
      world.call(person, 'changeRoom', { params: { roomId }, body: { asksSecondFactor, version: seen } })
    expect((await ask(me, true)).problem?.fields).toMatchObject([{ path: 'asksSecondFactor' }])
    await world.database.prisma.user.update({ where: { id }, data: { twoFactorEnabled: true } })
    const room = await ask(me, true)
    expect(room.body.asksSecondFactor).toBe(true)
    // The other owner has none: as an owner they are asked for it, as whoever looks after the room they go on.
    const refused = await world.call(owner, 'listInvitations', { params: { roomId } })
    expect(refused.problem).toMatchObject({ code: 'not_allowed', detail: expect.stringContaining('second factor') })
    expect((await world.call(owner, 'listTanks', { params: { roomId } })).status).toBe(200)
    expect((await ask(me, false, room.body.version)).status).toBe(200)
    expect((await world.call(owner, 'listInvitations', { params: { roomId } })).status).toBe(200)
  })
})

describe('signing in again', () => {
  /** An owner who came in an hour ago. */
  async function longIn() {
    const { email, browser } = await newcomer()
    const me = await browser()
    const { id } = await world.database.prisma.user.findUniqueOrThrow({ where: { email } })
    await world.database.prisma.membership.update({
      where: { roomId_userId: { roomId, userId: id } },
      data: { role: 'owner' },
    })
    const createdAt = new Date(Date.parse(world.clock.now()) - 3_600_000)
    await world.database.prisma.session.updateMany({ where: { userId: id }, data: { createdAt } })
    return { me, id }
  }
  const again = (person: Person, body: { password: string; code?: string }) =>
    world.call(person, 'signInAgain', { body, address: door.freshAddress() })

  test('is asked for before a role, a removal, an invitation and a backup, and is good for a quarter of an hour', async () => {
    const { me } = await longIn()
    const other = await world.person('Other', { roomId, role: 'viewer' })
    const params = { roomId, userId: other.userId }
    const give = (role: 'caretaker' | 'viewer') => world.call(me, 'changeRole', { params, body: { role } })
    expect((await give('caretaker')).problem).toMatchObject({ code: 'sign_in_again', status: 403 })
    expect((await world.call(me, 'removePerson', { params })).problem?.code).toBe('sign_in_again')
    const invite = { params: { roomId }, body: { role: 'owner' as const } }
    expect((await world.call(me, 'createInvitation', invite)).problem?.code).toBe('sign_in_again')
    expect((await world.call(me, 'getSignedInAgain')).problem?.code).toBe('sign_in_again')
    expect((await again(me, { password: 'not my password' })).problem?.detail).toContain('not your password')
    expect((await give('caretaker')).problem?.code).toBe('sign_in_again')
    expect((await again(me, { password })).status).toBe(200)
    expect((await give('caretaker')).body.role).toBe('caretaker')
    expect((await world.call(me, 'getSignedInAgain')).status).toBe(200)
    expect((await world.ok(me, 'listMySignIns')).map(({ outcome }) => outcome).slice(0, 2)).toEqual([
      'signed_in_again',
      'wrong_password',
    ])
    world.clock.advanceMinutes(16)
    expect((await give('viewer')).problem?.code).toBe('sign_in_again')
  })

  test('counts for its own browser alone, and a backup waits for it too', async () => {
    await world.database.prisma.session.updateMany({
      where: { userId: owner.userId },
      data: { createdAt: new Date(Date.parse(world.clock.now()) - 3_600_000) },
    })
    const backup = () =>
      world.app.inject({ url: '/api/v1/backup', headers: { host: 'localhost:3000', cookie: owner.cookie } })
    expect((await backup()).json()).toMatchObject({ code: 'sign_in_again' })
    await world.database.prisma.session.updateMany({
      where: { userId: owner.userId },
      data: { confirmedAt: world.clock.now() },
    })
    expect((await backup()).statusCode).toBe(200)
    await world.database.prisma.session.updateMany({
      where: { userId: owner.userId },
      data: { createdAt: new Date() },
    })
    const { me } = await longIn()
    expect((await world.call(me, 'getSignedInAgain')).problem?.code).toBe('sign_in_again')
  })

  test('asks for a code too where there is a second factor', async () => {
    const { me } = await longIn()
    const begun = await world.ok(me, 'beginSecondFactor', { body: { password }, address: door.freshAddress() })
    const secret = secretIn(begun.uri)
    const confirmed = await world.app.inject({
      method: 'POST',
      url: '/api/auth/account/second-factor/confirm',
      remoteAddress: door.freshAddress(),
      headers: { host: 'localhost:3000', cookie: me.cookie },
      payload: { code: codeOf(secret) },
    })
    const now: Person = { ...me, cookie: cookieOf(confirmed) }
    expect((await again(now, { password })).problem?.fields).toMatchObject([{ path: 'code' }])
    expect((await again(now, { password, code: '000000' })).problem?.code).toBe('invalid_input')
    expect((await again(now, { password, code: codeOf(secret) })).problem?.detail).toContain('good once')
    expect((await again(now, { password, code: nextCodeOf(secret) })).status).toBe(200)
    expect((await again(now, { password, code: begun.recoveryCodes[0]! })).status).toBe(200)
    expect((await again(now, { password, code: begun.recoveryCodes[0]! })).problem?.code).toBe('invalid_input')
  })
})

describe('guessing at one account from many addresses', () => {
  test('is slowed down for strangers, while a browser that was signed in before gets in', async () => {
    const { email, browser } = await newcomer()
    const mine = await browser()
    for (let tries = 0; tries < 20; tries += 1)
      expect((await door.signIn(email, `guess number ${tries}`)).statusCode).toBe(401)
    const stranger = await door.signIn(email, password)
    expect(stranger.json()).toMatchObject({
      code: 'too_many_requests',
      detail: expect.stringContaining('quarter of an hour'),
    })
    const known = await door.signIn(email, password, { headers: { cookie: mine.cookie } })
    expect(known.statusCode, known.body).toBe(200)
    // A mark that somebody made up is none.
    const forged = mine.cookie.replace(/(fryward\.known_[0-9a-f]+=)[^;]+/, `$1${'A'.repeat(43)}`)
    expect((await door.signIn(email, password, { headers: { cookie: forged } })).statusCode).toBe(429)
    world.clock.advanceMinutes(16)
    expect((await door.signIn(email, password)).statusCode).toBe(200)
  })
})

describe('the record of sign-ins', () => {
  test('says who tried, from where, and how it went: to each their own, to the owner of the server all', async () => {
    const { email, browser } = await newcomer()
    const address = door.freshAddress()
    await door.signIn(email, 'not the password', { address, headers: { 'user-agent': 'A stranger' } })
    const me = await browser()
    const mine = await world.ok(me, 'listMySignIns')
    expect(mine).toMatchObject([
      { email, outcome: 'signed_in', browser: 'A phone of theirs' },
      { email, outcome: 'wrong_password', address, browser: 'A stranger', at: world.clock.now() },
    ])
    await door.signIn('nobody-here@example.test', 'not the password')
    const all = await world.ok(owner, 'listSignIns')
    expect(all[0]).toMatchObject({ email: 'nobody-here@example.test', outcome: 'wrong_password' })
    expect(all.map((each) => each.id)).toEqual(expect.arrayContaining(mine.map((each) => each.id)))
    expect((await world.call(me, 'listSignIns')).problem?.code).toBe('not_allowed')
    const { rows } = await world.database.pool.query<{ text: string }>('SELECT t::text AS text FROM sign_in_try t')
    for (const { text } of rows) expect(text).not.toContain('not the password')
  })
})

describe('leaving a room', () => {
  test('takes oneself out, with the links that one made; the last owner stays', async () => {
    const leaver = await world.person('Leaver', { roomId, role: 'owner' })
    const { token } = await door.invite({ owner: leaver, roomId })
    await world.ok(leaver, 'leaveRoom', { params: { roomId } })
    expect((await world.call(leaver, 'getRoom', { params: { roomId } })).problem?.code).toBe('not_found')
    expect((await world.call(leaver, 'leaveRoom', { params: { roomId } })).problem?.code).toBe('not_found')
    expect((await world.call(null, 'getInvitationPreview', { params: { token } })).problem?.code).toBe('not_found')
    const { entries } = await world.ok(owner, 'listAudit', { params: { roomId }, query: { limit: 2 } })
    expect(entries.map(({ action }) => action).sort()).toEqual(['invitation.revoke', 'person.leave'])
    await world.database.prisma.membership.deleteMany({
      where: { roomId, role: 'owner', userId: { not: owner.userId } },
    })
    expect((await world.call(owner, 'leaveRoom', { params: { roomId } })).problem?.code).toBe('wrong_state')
  })
})
