import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'
import { cookieOf, doorOf, password } from './door.ts'

let world: World
let owner: Person
let roomId: string
let door: ReturnType<typeof doorOf>

beforeAll(async () => {
  world = await openWorld()
  door = doorOf(world)
  const opened = await openRoom(world)
  owner = opened.owner
  roomId = opened.room.id
})
afterAll(() => world.close())

const inRoom = () => ({ params: { roomId } })
const newest = async () => (await world.ok(owner, 'listAudit', { params: { roomId }, query: { limit: 1 } })).entries[0]!

describe('invitations', () => {
  test('a link says what it invites to, without its token being kept', async () => {
    const made = await door.invite({ owner, roomId }, 'caretaker', 3)
    expect(await newest()).toMatchObject({
      action: 'invitation.create',
      detail: { invitationId: made.id, role: 'caretaker' },
    })
    const preview = await world.ok(null, 'getInvitationPreview', { params: { token: made.token } })
    expect(preview).toEqual({
      roomName: 'Back room',
      role: 'caretaker',
      invitedByName: owner.name,
      expiresAt: new Date(Date.parse(world.clock.now()) + 3 * 86_400_000).toISOString(),
    })
    const { rows } = await world.database.pool.query<{ text: string }>(
      'SELECT invitation::text AS text FROM invitation',
    )
    for (const row of rows) expect(row.text).not.toContain(made.token)
    const listed = await world.ok(owner, 'listInvitations', inRoom())
    expect(JSON.stringify(listed)).not.toContain(made.token)
  })

  test('a repeat gets the same link, and nothing that the server keeps holds its token', async () => {
    const asked = { ...inRoom(), body: { role: 'viewer' as const }, key: 'an-invitation-made-once' }
    const made = await world.ok(owner, 'createInvitation', asked)
    expect(await world.ok(owner, 'createInvitation', asked)).toEqual(made)
    const other = await world.ok(owner, 'createInvitation', { ...asked, key: 'another-invitation' })
    expect(other.link).not.toBe(made.link)
    const token = made.link.split('/').at(-1)!
    expect((await world.call(null, 'getInvitationPreview', { params: { token } })).status).toBe(200)
    const { rows } = await world.database.pool.query<{ text: string }>(
      'SELECT kept::text AS text FROM idempotency_key AS kept UNION ALL SELECT invitation::text FROM invitation',
    )
    expect(rows.length).toBeGreaterThan(2)
    for (const row of rows) expect(row.text).not.toContain(token)
  })

  test('nobody joins under the name of somebody who is there', async () => {
    const { token } = await door.invite({ owner, roomId })
    const taken = await door.join(token, 'same-name@example.test', 'the OWNER')
    expect(taken.problem).toMatchObject({ code: 'conflict', fields: [{ path: 'name' }] })
    expect(await world.database.prisma.user.count({ where: { email: 'same-name@example.test' } })).toBe(0)
    const namesake = await world.person('The Owner')
    const accepted = await world.call(namesake, 'acceptInvitation', { params: { token }, body: {} })
    expect(accepted.problem?.code).toBe('conflict')
    expect((await door.join(token, 'same-name@example.test', 'Another owner')).status).toBe(201)
  })

  test.each(['Sam\u202e', '\u2066Sam', 'Sa\u200bm', 'Sam\u0007', 'Sam\nSmith', '\u200e', 'x'.repeat(81), ' '])(
    'nobody joins as %j',
    async (name) => {
      const { token } = await door.invite({ owner, roomId })
      const answer = await door.join(token, 'odd-name@example.test', name)
      expect(answer.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'name' }] })
    },
  )

  test.each(['Zoë', 'José María', '李小龍', 'علی‌رضا', '👩‍🌾 Ana', "O'Brien"])('%s joins', async (name) => {
    const { token } = await door.invite({ owner, roomId })
    expect((await door.join(token, `named-${name.length}-${name.codePointAt(0)}@example.test`, name)).status).toBe(201)
  })

  test('somebody new joins with an account of their own, signs in with it, and has the role', async () => {
    const { token, id } = await door.invite({ owner, roomId }, 'stand_in')
    const answer = await door.join(token, 'Sam@Example.test', 'Sam')
    expect([answer.status, answer.body]).toEqual([201, { roomId }])
    expect(await newest()).toMatchObject({ action: 'person.join', actor: { kind: 'person', name: 'Sam' } })
    const signedIn = await door.signIn('sam@example.test', password)
    expect(signedIn.statusCode).toBe(200)
    const sam = { userId: '', name: 'Sam', email: 'sam@example.test', cookie: cookieOf(signedIn) }
    expect((await world.ok(sam, 'getMe')).rooms).toMatchObject([{ id: roomId, role: 'stand_in' }])
    const invitation = (await world.ok(owner, 'listInvitations', inRoom())).find((each) => each.id === id)
    expect(invitation).toMatchObject({ acceptedAt: world.clock.now(), acceptedByName: 'Sam' })
  })

  test('somebody with an account accepts, once', async () => {
    const { token } = await door.invite({ owner, roomId }, 'viewer')
    const guest = await world.person('Guest')
    const accept = () => world.call(guest, 'acceptInvitation', { params: { token }, body: {} })
    expect((await accept()).body).toEqual({ roomId })
    expect((await accept()).problem?.code).toBe('not_found')
    const second = await door.invite({ owner, roomId }, 'caretaker')
    const already = await world.call(guest, 'acceptInvitation', { params: { token: second.token }, body: {} })
    expect(already.problem?.code).toBe('wrong_state')
    // Being in already does not use the link up.
    expect((await world.call(null, 'getInvitationPreview', { params: { token: second.token } })).status).toBe(200)
  })

  test('a link used by many at the same instant lets one in', async () => {
    const { token } = await door.invite({ owner, roomId }, 'viewer')
    const guests = await Promise.all([1, 2, 3].map((number) => world.person(`At once ${number}`)))
    const answers = await Promise.all([
      ...guests.map((guest) => world.call(guest, 'acceptInvitation', { params: { token }, body: {} })),
      door.join(token, 'at-once-4@example.test'),
      door.join(token, 'at-once-5@example.test'),
    ])
    expect(answers.filter((answer) => answer.status < 300)).toHaveLength(1)
    for (const answer of answers.filter((each) => each.problem)) expect(answer.problem?.code).toBe('not_found')
  })

  test('a form that was sent twice at the same instant makes one account', async () => {
    const { token } = await door.invite({ owner, roomId }, 'viewer')
    const answers = await Promise.all([1, 2, 3].map(() => door.join(token, 'double@example.test')))
    expect(answers.map((answer) => answer.status).sort()).toEqual([201, 404, 404])
    expect(await world.database.prisma.user.count({ where: { email: 'double@example.test' } })).toBe(1)
  })

  test('one address with two links at the same instant is one account', async () => {
    const [first, second] = [
      await door.invite({ owner, roomId }, 'viewer'),
      await door.invite({ owner, roomId }, 'viewer'),
    ]
    const answers = await Promise.all([
      door.join(first.token, 'two@example.test'),
      door.join(second.token, 'Two@example.test'),
    ])
    expect(answers.map((answer) => answer.problem?.code ?? 'joined').sort()).toEqual(['conflict', 'joined'])
  })

  test('accepting and withdrawing at the same instant leave one of the two, never an error of ours', async () => {
    for (let round = 0; round < 5; round += 1) {
      const { token, id } = await door.invite({ owner, roomId }, 'viewer')
      const guest = await world.person(`Racer ${round}`)
      const [accepted, revoked] = await Promise.all([
        world.call(guest, 'acceptInvitation', { params: { token }, body: {} }),
        world.call(owner, 'revokeInvitation', { params: { roomId, invitationId: id } }),
      ])
      expect([accepted.status, revoked.status]).toEqual(accepted.status === 201 ? [201, 409] : [404, 200])
    }
  })

  test('a link that is withdrawn, out of date or made up opens nothing', async () => {
    const revoked = await door.invite({ owner, roomId })
    await world.ok(owner, 'revokeInvitation', { params: { roomId, invitationId: revoked.id } })
    expect(await newest()).toMatchObject({ action: 'invitation.revoke', detail: { invitationId: revoked.id } })
    const expired = await door.invite({ owner, roomId }, 'viewer', 1)
    world.clock.advanceMinutes(1440)
    const before = await world.database.prisma.user.count()
    for (const token of [revoked.token, expired.token, 'made-up-made-up-made-up']) {
      expect((await world.call(null, 'getInvitationPreview', { params: { token } })).problem?.code).toBe('not_found')
      expect((await door.join(token, 'nobody@example.test')).problem?.code).toBe('not_found')
      const accepted = await world.call(await world.person('Late'), 'acceptInvitation', { params: { token }, body: {} })
      expect(accepted.problem?.code).toBe('not_found')
    }
    expect(await world.database.prisma.user.count()).toBe(before + 3)
  })

  test.each(['removed', 'no owner any more'] as const)('the links of an owner who is %s open nothing', async (fate) => {
    const second = await world.person(`Owner ${fate}`, { roomId, role: 'owner' })
    const theirs = await door.invite({ owner: second, roomId }, 'owner')
    const others = await door.invite({ owner, roomId })
    const params = { roomId, userId: second.userId }
    if (fate === 'removed') await world.ok(owner, 'removePerson', { params })
    else await world.ok(owner, 'changeRole', { params, body: { role: 'caretaker' } })
    const accepted = await world.call(await world.person('Friend of theirs'), 'acceptInvitation', {
      params: { token: theirs.token },
      body: {},
    })
    expect(accepted.problem?.code).toBe('not_found')
    expect((await door.join(theirs.token, 'comes-back@example.test')).problem?.code).toBe('not_found')
    const { entries } = await world.ok(owner, 'listAudit', { params: { roomId }, query: { limit: 2 } })
    expect(entries.find(({ action }) => action === 'invitation.revoke')?.detail).toMatchObject({
      invitationId: theirs.id,
    })
    // What somebody else made stays good.
    expect((await world.call(null, 'getInvitationPreview', { params: { token: others.token } })).status).toBe(200)
  })

  test('an owner who stays one keeps their links', async () => {
    const second = await world.person('Owner again', { roomId, role: 'owner' })
    const { token } = await door.invite({ owner: second, roomId })
    await world.ok(owner, 'changeRole', { params: { roomId, userId: second.userId }, body: { role: 'owner' } })
    expect((await world.call(null, 'getInvitationPreview', { params: { token } })).status).toBe(200)
  })

  test('an address that has an account joins by signing in, not by a second account', async () => {
    const { token } = await door.invite({ owner, roomId })
    await door.join((await door.invite({ owner, roomId })).token, 'twice@example.test')
    expect((await door.join(token, 'TWICE@example.test')).problem?.code).toBe('conflict')
    // The link is still good for them.
    expect((await world.call(null, 'getInvitationPreview', { params: { token } })).status).toBe(200)
  })
})
