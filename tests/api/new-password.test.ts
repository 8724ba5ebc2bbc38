import { claimResets } from '@fryward/room'
import { createResetMailer, sendResets } from '@fryward/scheduler'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { openMailServer } from '../support/outside.ts'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'
import { codeOf, nextCodeOf, secretIn } from './authenticator.ts'
import { cookieOf, doorOf, password } from './door.ts'

let world: World
let owner: Person
let roomId: string
let door: ReturnType<typeof doorOf>
let mail: Awaited<ReturnType<typeof openMailServer>>
let serial = 0
const wanted = 'quite another password'

beforeAll(async () => {
  world = await openWorld()
  mail = await openMailServer()
  door = doorOf(world)
  const opened = await openRoom(world)
  owner = opened.owner
  roomId = opened.room.id
})
afterAll(async () => {
  await world.close()
  await mail.close()
})
beforeEach(() => {
  world.clock.advanceMinutes(61)
  mail.letters.length = 0
  mail.state.mood = 'take'
})

async function newcomer() {
  serial += 1
  const email = `forgets-${serial}@example.test`
  await door.join((await door.invite({ owner, roomId }, 'caretaker')).token, email)
  const signedIn = await door.signIn(email, password)
  return { email, me: { userId: '', name: '', email, cookie: cookieOf(signedIn) } satisfies Person }
}
const isIn = async (person: Person) => (await world.call(person, 'getMe')).status === 200
const ask = (email: string, address = door.freshAddress()) =>
  world.call(null, 'askForNewPassword', { body: { email }, address })
const contextOfScheduler = () => ({
  ...{ database: world.database, now: world.clock.now() },
  actor: { kind: 'system' as const, job: 'reset' },
})
const send = () =>
  sendResets({
    ctx: contextOfScheduler,
    mailReset: createResetMailer({
      mail: { smtpUrl: mail.url, from: 'fryward@example.org' },
      publicUrl: 'http://localhost:3000',
    }),
    log: { warn: () => undefined, info: () => undefined },
  })
const tokenIn = (text: string) => /http:\/\/localhost:3000\/new-password\/([\w-]+)/.exec(text)?.[1] ?? ''
async function mailedToken(email: string): Promise<string> {
  expect((await ask(email)).status).toBe(200)
  expect(await send()).toBe(1)
  return tokenIn(mail.letters.at(-1)?.text ?? '')
}
const give = (token: string, typed = wanted) =>
  world.call(null, 'giveNewPassword', { params: { token }, body: { password: typed }, address: door.freshAddress() })

describe('a new password by mail', () => {
  test('is given by a link that is good once, and signs the account out everywhere', async () => {
    const { email, me } = await newcomer()
    const address = door.freshAddress()
    expect((await ask(email.toUpperCase(), address)).body).toEqual({ ok: true })
    expect(await send()).toBe(1)
    const [letter] = mail.letters
    expect(letter).toMatchObject({ to: [email], text: expect.stringContaining(address) })
    const token = tokenIn(letter?.text ?? '')
    expect((await world.call(null, 'getPasswordReset', { params: { token } })).body).toMatchObject({ email })
    expect((await give(token, 'password123')).problem?.fields).toMatchObject([{ path: 'password' }])
    expect((await give(token)).status).toBe(200)
    expect(await isIn(me)).toBe(false)
    expect((await door.signIn(email, password)).statusCode).toBe(401)
    expect((await door.signIn(email, wanted)).statusCode).toBe(200)
    expect((await give(token)).problem).toMatchObject({ code: 'not_found', detail: expect.stringContaining('used') })
    const tries = await world.ok(owner, 'listSignIns')
    expect(tries.filter((each) => each.email === email).map(({ outcome }) => outcome)).toEqual(
      expect.arrayContaining(['reset_asked', 'password_reset']),
    )
  })

  test('says nothing of whether there is such an account, and does the same for both', async () => {
    const { email } = await newcomer()
    const statements: string[] = []
    const answers = []
    for (const each of ['nobody@example.test', email]) {
      const answer = await ask(each)
      answers.push({ status: answer.status, body: answer.body })
      const { rows } = await world.database.pool.query<{ kept: string }>(
        `SELECT json_build_object('user', user_id, 'token', token_hash, 'due', due_at, 'until', expires_at)::text AS kept
         FROM password_reset WHERE email = $1`,
        [each],
      )
      statements.push(...rows.map(({ kept }) => kept))
    }
    expect(answers[0]).toEqual(answers[1])
    // What is kept at once is the same too, so that the answer has nothing to take longer over.
    expect(statements).toHaveLength(2)
    expect(statements[0]).toBe(statements[1])
    expect(await send()).toBe(1)
    expect(mail.letters.map(({ to }) => to)).toEqual([[email]])
    expect(await world.database.prisma.passwordReset.count({ where: { email: 'nobody@example.test' } })).toBe(0)
  })

  test('is over after an hour, and lets one of two in who bring the same link at once', async () => {
    const { email } = await newcomer()
    const late = await mailedToken(email)
    world.clock.advanceMinutes(60)
    expect((await give(late)).problem?.code).toBe('not_found')
    const [first, second] = [await mailedToken(email), await mailedToken(email)]
    const answers = await Promise.all([give(first), give(first), give(second)])
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 404, 404])
  })

  test('asks for the code of a second factor as ever', async () => {
    const { email, me } = await newcomer()
    const begun = await world.ok(me, 'beginSecondFactor', { body: { password }, address: door.freshAddress() })
    const secret = secretIn(begun.uri)
    await world.ok(me, 'confirmSecondFactor', { body: { code: codeOf(secret) }, address: door.freshAddress() })
    const halfway = cookieOf(await door.signIn(email, password))
    expect((await give(await mailedToken(email))).status).toBe(200)
    const withCode = (cookie: string) =>
      world.app.inject({
        ...{ method: 'POST', url: '/api/auth/sign-in/code', remoteAddress: door.freshAddress() },
        headers: { host: 'localhost:3000', cookie },
        payload: { code: nextCodeOf(secret) },
      })
    // Whoever was halfway in with the old password stays out.
    expect((await withCode(halfway)).json()).toMatchObject({ code: 'not_signed_in' })
    const signedIn = await door.signIn(email, wanted)
    expect(signedIn.json()).toEqual({ ok: true, asksCode: true })
    expect((await withCode(cookieOf(signedIn))).statusCode).toBe(200)
  })

  test('is asked for three times an hour for an account and ten times from an address', async () => {
    const { email } = await newcomer()
    const together = await Promise.all([ask(email), ask(email), ask(email), ask(email)])
    expect(together.map(({ status }) => status).sort()).toEqual([200, 200, 200, 429])
    const address = door.freshAddress()
    const from = []
    for (let number = 0; number < 11; number += 1)
      from.push((await ask(`somebody-${number}@example.test`, address)).status)
    expect(from).toEqual([...Array.from({ length: 10 }, () => 200), 429])
    world.clock.advanceMinutes(61)
    expect((await ask(email, address)).status).toBe(200)
  })

  test('keeps no link anywhere', async () => {
    const { email } = await newcomer()
    const token = await mailedToken(email)
    const { rows } = await world.database.pool.query<{ text: string }>('SELECT r::text AS text FROM password_reset r')
    expect(rows.length).toBeGreaterThan(0)
    for (const { text } of rows) expect(text).not.toContain(token)
  })

  test('is mailed later where the mail server is away, and is on record where it never was', async () => {
    const { email } = await newcomer()
    mail.state.mood = 'refuse'
    await ask(email)
    expect(await send()).toBe(1)
    const outcomes = async () =>
      (await world.ok(owner, 'listSignIns')).filter((each) => each.email === email).map(({ outcome }) => outcome)
    // A box that the mail server does not know will not be there in a minute.
    expect(await outcomes()).toContain('reset_not_mailed')
    expect(await world.database.prisma.passwordReset.count({ where: { email } })).toBe(0)
    await ask(email)
    const outage = async () => {
      const nowhere = createResetMailer({
        mail: { smtpUrl: 'smtp://127.0.0.1:1', from: 'fryward@example.org' },
        publicUrl: 'http://localhost:3000',
      })
      return sendResets({
        ctx: contextOfScheduler,
        mailReset: nowhere,
        log: { warn: () => undefined, info: () => undefined },
      })
    }
    expect(await outage()).toBe(1)
    expect(await claimResets(contextOfScheduler())).toEqual([])
    world.clock.advanceMinutes(2)
    mail.state.mood = 'take'
    expect(await send()).toBe(1)
    expect((await give(tokenIn(mail.letters.at(-1)?.text ?? ''))).status).toBe(200)
  })
})

describe('a server that sends no mail', () => {
  test('says so, and what to do instead', async () => {
    const bare = await openWorld({ isMailSetUp: false })
    expect((await bare.ok(null, 'getServer')).sendsMail).toBe(false)
    const refused = await bare.call(null, 'askForNewPassword', { body: { email: 'ana@example.test' } })
    expect(refused.problem).toMatchObject({ code: 'wrong_state', detail: expect.stringContaining('reset-password') })
    await bare.close()
  })

  test("has its owner make a link, which is on its person's record; nobody else may", async () => {
    const { email, me } = await newcomer()
    const { id: userId } = await world.database.prisma.user.findUniqueOrThrow({ where: { email } })
    expect((await world.call(me, 'createResetLink', { body: { userId: owner.userId } })).problem?.code).toBe(
      'not_allowed',
    )
    const { link } = await world.ok(owner, 'createResetLink', { body: { userId } })
    expect((await world.ok(me, 'listMySignIns')).map(({ outcome }) => outcome)).toContain('reset_link_made')
    expect((await give(tokenIn(link))).status).toBe(200)
    expect(await isIn(me)).toBe(false)
    const nobody = await world.call(owner, 'createResetLink', { body: { userId: 'nobody' } })
    expect(nobody.problem?.code).toBe('not_found')
  })
})
