import { randomUUID } from 'node:crypto'
import { type Context, getDay, RoomError } from '@fryward/room'
import { listenToRooms, lockRoom } from '@fryward/store'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { findCard, hasBottle } from '../../packages/room/src/frame/directory.ts'
import type { RoomPermission } from '../../packages/room/src/frame/permission.ts'
import { readInRoom } from '../../packages/room/src/frame/read-in-room.ts'
import { changeSubject, endSubject, insertSubject } from '../../packages/room/src/frame/subject-row.ts'
import { type Work, type WriteFrame, writeInRoom } from '../../packages/room/src/frame/write-in-room.ts'
import { knownState } from '../../packages/room/src/state/known-states.ts'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'

let world: World
let full: FullRoom
let roomId: string
beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  roomId = full.roomId
})
afterAll(() => world.close())
beforeEach(() => world.clock.advanceMinutes(1))

const prisma = () => world.database.prisma
const ctxOf = (person: Person, key?: string, requestHash = 'hash'): Context => ({
  ...world.contextOf(person),
  ...(key === undefined ? {} : { idempotency: { key, requestHash } }),
})
const frameOf = (more: Partial<WriteFrame> = {}): WriteFrame => ({
  ...{ ctx: ctxOf(full.caretaker), roomId, permission: 'manage' as RoomPermission },
  ...more,
})
const revision = async () => (await prisma().room.findUniqueOrThrow({ where: { id: roomId } })).revision
const auditOf = (at: number) =>
  prisma().auditEntry.findMany({ where: { roomId, revision: at }, orderBy: { ordinal: 'asc' } })
const shelf = (name: string) => (work: Work) => insertSubject(work, { kind: 'tank', name })
/** A write of one thing that has no table of its own: the frame knows of none. */
const makes = (name: string, frame: Partial<WriteFrame> = {}) =>
  writeInRoom(frameOf(frame), async (work) => {
    const id = await shelf(name)(work)
    work.audit({ action: 'shelf.make', subjectId: id })
    return { id }
  })
const named = (name: string) => prisma().subject.count({ where: { roomId, name } })
const codeOf = (promise: Promise<unknown>) =>
  promise.then(
    () => 'nothing',
    (error: unknown) => (error instanceof RoomError ? error.code : String(error)),
  )
const freshState = () =>
  readInRoom({ ctx: ctxOf(full.viewer), roomId }, async ({ state }) => ({ ...(await state()).snapshot }))

describe('a write', () => {
  test('that says nothing of what it did is undone', async () => {
    const before = await revision()
    const silent = writeInRoom(frameOf(), shelf('Silent shelf'))
    await expect(silent).rejects.toThrow('left no audit entry')
    expect([await revision(), await named('Silent shelf')]).toEqual([before, 0])
  })

  test('that fails after all its work leaves nothing, and its key is as good as new', async () => {
    const key = randomUUID()
    const before = await revision()
    const broken = writeInRoom(
      frameOf({ ctx: ctxOf(full.caretaker, key) }),
      async (work) => {
        await shelf('Broken shelf')(work)
        work.audit({ action: 'shelf.make' })
      },
      async (work) => {
        expect((await work.state()).revision).toBe(before + 1)
        throw new Error('the view broke')
      },
    )
    await expect(broken).rejects.toThrow('the view broke')
    expect([await revision(), await named('Broken shelf'), await auditOf(before + 1)]).toEqual([before, 0, []])
    // What it would have made of the room nobody knows.
    expect(knownState(world.database, roomId)?.revision ?? before).toBeLessThanOrEqual(before)
    expect(await codeOf(makes('Broken shelf', { ctx: ctxOf(full.caretaker, key) }))).toBe('nothing')
    expect([await revision(), await named('Broken shelf')]).toEqual([before + 1, 1])
  })

  test('is told in its own words: who, when, of what, in their order, under one revision', async () => {
    const before = await revision()
    await writeInRoom(frameOf(), async (work) => {
      expect(work).toMatchObject({ roomId, revision: before + 1, role: 'caretaker' })
      work.audit({ action: 'first', subjectId: full.culture.id, detail: { litres: 3 } })
      work.audit({ action: 'second', detail: (planned) => ({ ...planned }) })
      work.audit({ action: 'third' })
    })
    const told = await auditOf(before + 1)
    expect(told.map(({ ordinal, action, subjectId, detail }) => [ordinal, action, subjectId, detail])).toEqual([
      [1, 'first', full.culture.id, { litres: 3 }],
      [2, 'second', null, { created: 0, updated: 0, withdrawn: 0 }],
      [3, 'third', null, {}],
    ])
    for (const entry of told) {
      expect(entry).toMatchObject({ userId: full.caretaker.userId, actorName: 'Caretaker Carla' })
      expect(entry.at.toISOString()).toBe(world.clock.now())
    }
  })

  test('of the clock is told as what it did, and is nobody’s', async () => {
    const ctx: Context = { ...ctxOf(full.owner), actor: { kind: 'system', job: 'close-windows' } }
    // It has no request to repeat, whatever key it brings.
    const keyed = { ...ctx, idempotency: { key: randomUUID(), requestHash: 'hash' } }
    for (const each of [keyed, keyed])
      await writeInRoom(frameOf({ ctx: each, permission: 'own' }), async (work) => work.audit({ action: 'swept' }))
    expect(await auditOf(await revision())).toMatchObject([{ actorName: 'close-windows', userId: null }])
  })

  test('plans the days anew with what it did, and a task that changed says why: the last reason of several', async () => {
    await getDay({ ctx: ctxOf(full.viewer), roomId, date: 'today' })
    const before = await revision()
    const planned = await writeInRoom(frameOf(), async (work) => {
      const where = { roomId_id: { roomId, id: full.culture.id } }
      await work.tx.culture.update({ where, data: { volumeL: 9 } })
      await work.tx.subject.update({ where, data: { version: { increment: 1 } } })
      work.audit({ action: 'one', why: 'the first reason' })
      work.audit({ action: 'two', why: 'R1 was halved' })
      work.audit({ action: 'three', detail: (told) => ({ ...told }) })
    })
    expect(planned).toBeUndefined()
    const changes = await prisma().taskChange.findMany({ where: { roomId, revision: before + 1 } })
    expect(changes.length).toBeGreaterThan(0)
    expect(new Set(changes.map(({ why }) => why))).toEqual(new Set(['R1 was halved']))
    const [, , three] = await auditOf(before + 1)
    expect((three!.detail as { updated: number }).updated).toBeGreaterThanOrEqual(changes.length)
    expect((await freshState()).cultures.find(({ id }) => id === full.culture.id)?.volumeL).toBe(9)
    // A reason that nobody gave is the room's.
    await writeInRoom(frameOf(), async (work) => {
      const where = { roomId_id: { roomId, id: full.culture.id } }
      await work.tx.culture.update({ where, data: { volumeL: 18 } })
      work.audit({ action: 'back' })
    })
    const [back] = await prisma().taskChange.findMany({ where: { roomId, revision: before + 2 } })
    expect(back?.why).toBe('the room changed')
  })

  test('that changes no day leaves the lists, and the state that is known moves on with it', async () => {
    await getDay({ ctx: ctxOf(full.viewer), roomId, date: 'today' })
    const before = knownState(world.database, roomId)!
    expect(before.revision).toBe(await revision())
    await writeInRoom(frameOf({ changesDay: false }), async (work) => {
      work.audit({ action: 'quiet', detail: (planned) => ({ ...planned }) })
    })
    expect(await auditOf(before.revision + 1)).toMatchObject([{ detail: { created: 0, updated: 0, withdrawn: 0 } }])
    expect(knownState(world.database, roomId)).toEqual({ ...before, revision: before.revision + 1 })
    // One that this process has not heard of lies between: then nothing is known of this one.
    await prisma().room.update({ where: { id: roomId }, data: { revision: { increment: 1 } } })
    await writeInRoom(frameOf({ changesDay: false }), async (work) => work.audit({ action: 'quiet' }))
    expect(knownState(world.database, roomId)?.revision).toBe(before.revision + 1)
  })

  test('is heard of once it is committed, and not if it is not', async () => {
    const heard: number[] = []
    const listener = await new Promise<ReturnType<typeof listenToRooms>>((resolve) => {
      const made = listenToRooms({
        connectionString: world.database.connectionString,
        onNotice: (notice) => notice.roomId === roomId && heard.push(notice.revision),
        onSessionEnded: () => undefined,
        onReconnect: () => resolve(made),
        onError: () => undefined,
      })
    })
    const before = await revision()
    await writeInRoom(frameOf(), shelf('Unheard shelf')).catch(() => undefined)
    await makes('Heard shelf')
    await expect.poll(() => heard).toEqual([before + 1])
    await listener.close()
  })

  test('gives its answer as the room then is, and the same to whoever asks again', async () => {
    const ctx = ctxOf(full.caretaker, randomUUID())
    let runs = 0
    const write = () =>
      writeInRoom(
        frameOf({ ctx }),
        async (work) => {
          runs += 1
          work.audit({ action: 'counted' })
          return runs
        },
        async (work, done) => ({ done, revision: (await work.state()).revision }),
      )
    const first = await write()
    expect(first).toEqual({ done: 1, revision: await revision() })
    world.clock.advanceMinutes(60)
    expect(await write()).toEqual(first)
    expect(runs).toBe(1)
    const other = ctxOf(full.caretaker, ctx.idempotency!.key, 'another hash')
    await expect(makes('Other shelf', { ctx: other })).rejects.toMatchObject({
      code: 'idempotency_mismatch',
      message: expect.stringMatching(
        `"${ctx.idempotency!.key}" was used before .* Send this one with a key of its own.`,
      ),
    })
    // The same key of somebody else is another key.
    expect(await codeOf(makes('Other shelf', { ctx: ctxOf(full.owner, ctx.idempotency!.key) }))).toBe('nothing')
  })
})

describe('who may', () => {
  test('is asked again under the lock: a role that was taken while a write waited is gone', async () => {
    const leaver = await world.person('Leaver', { roomId, role: 'caretaker' })
    const before = await revision()
    let waiting: Promise<string> = Promise.resolve('not asked')
    await prisma().$transaction(async (tx) => {
      await lockRoom(tx, roomId)
      waiting = codeOf(makes('Late shelf', { ctx: ctxOf(leaver) }))
      // It has passed the first look and stands at the room's lock.
      await expect
        .poll(async () => {
          const [row] = await prisma().$queryRaw<{ number: number }[]>`
            SELECT count(*)::int AS number FROM pg_stat_activity
            WHERE wait_event_type = 'Lock' AND query LIKE 'UPDATE room SET revision%' AND datname = current_database()`
          return row?.number
        })
        .toBe(1)
      await tx.membership.update({
        where: { roomId_userId: { roomId, userId: leaver.userId } },
        data: { role: 'viewer' },
      })
    })
    expect(await waiting).toBe('not_allowed')
    expect([await revision(), await named('Late shelf')]).toEqual([before, 0])
  })

  test('is told what it takes, and a stranger nothing', async () => {
    const refused = (person: Person, permission: RoomPermission) =>
      makes('Refused shelf', { ctx: ctxOf(person), permission }).then(
        () => 'nothing',
        (error: RoomError) => error.message,
      )
    expect(await refused(full.viewer, 'record')).toBe(
      'This is for a stand-in, a caretaker or an owner; you are here as viewer.',
    )
    expect(await refused(full.viewer, 'sign_off')).toMatch(/^This is for a stand-in, a caretaker or an owner;/)
    expect(await refused(full.standIn, 'manage')).toBe('This is for a caretaker or an owner; you are here as stand-in.')
    expect(await refused(full.caretaker, 'own')).toBe('This is for an owner; you are here as caretaker.')
    const neighbour = (await openRoom(world, { name: 'Next door' })).owner
    expect(await codeOf(makes('Refused shelf', { ctx: ctxOf(neighbour) }))).toBe('not_found')
    expect(await codeOf(makes('Refused shelf', { roomId: randomUUID() }))).toBe('not_found')
    const clock: Context = { ...ctxOf(full.owner), actor: { kind: 'system', job: 'sweep' } }
    expect(await codeOf(makes('Refused shelf', { ctx: clock, roomId: randomUUID() }))).toBe('not_found')
    expect(await named('Refused shelf')).toBe(0)
  })

  test('an owner has a second factor where the room asks for one', async () => {
    const asks = (asksSecondFactor: boolean) =>
      prisma().room.update({ where: { id: roomId }, data: { asksSecondFactor } })
    const own = (name: string) => codeOf(makes(name, { ctx: ctxOf(full.owner), permission: 'own' }))
    await asks(true)
    expect(await own('Owned shelf 1')).toBe('not_allowed')
    // What others may do too needs none.
    expect(await codeOf(makes('Managed shelf', { ctx: ctxOf(full.owner) }))).toBe('nothing')
    const account = { where: { id: full.owner.userId } }
    await prisma().user.update({ ...account, data: { twoFactorEnabled: true } })
    expect(await own('Owned shelf 2')).toBe('nothing')
    await prisma().user.update({ ...account, data: { twoFactorEnabled: false } })
    await asks(false)
    expect(await own('Owned shelf 3')).toBe('nothing')
  })

  test('reads what a role may read, from one moment of the room', async () => {
    expect(await codeOf(readInRoom({ ctx: ctxOf(full.viewer), roomId, permission: 'own' }, async () => 1))).toBe(
      'not_allowed',
    )
    await readInRoom({ ctx: ctxOf(full.viewer), roomId }, async (read) => {
      expect(read.role).toBe('viewer')
      const before = await read.state()
      await makes('Shelf of meanwhile')
      expect(await read.state()).toBe(before)
      expect(await read.tx.subject.count({ where: { roomId, name: 'Shelf of meanwhile' } })).toBe(0)
    })
    expect(await named('Shelf of meanwhile')).toBe(1)
  })
})

describe('a room’s writers', () => {
  test('give their turn back, whatever became of them', async () => {
    const fails = () => codeOf(writeInRoom(frameOf(), () => Promise.reject(new Error('no'))))
    expect(await Promise.all(Array.from({ length: 6 }, fails))).toEqual(Array(6).fill('Error: no'))
    const before = await revision()
    await Promise.all(['Turn 1', 'Turn 2', 'Turn 3', 'Turn 4', 'Turn 5'].map((name) => makes(name)))
    expect(await revision()).toBe(before + 5)
  })
})

describe('a thing of the room', () => {
  const act = (run: (work: Work) => Promise<unknown>) =>
    codeOf(
      writeInRoom(frameOf(), async (work) => {
        await run(work)
        work.audit({ action: 'acted' })
      }),
    )

  test('has a name that no other living one here has, however it is written', async () => {
    const { id } = await makes('Top shelf')
    expect(await prisma().subject.findUniqueOrThrow({ where: { roomId_id: { roomId, id } } })).toMatchObject({
      ...{ kind: 'tank', name: 'Top shelf', note: '', endedAt: null, version: 1 },
      createdAt: new Date(world.clock.now()),
    })
    await expect(makes('top SHELF')).rejects.toMatchObject({
      ...{ code: 'invalid_input', message: '"top SHELF" is the name of a tank here already; choose another.' },
      fields: [{ path: 'name', received: 'top SHELF' }],
    })
    await expect(makes(full.batch.name)).rejects.toThrow(`"${full.batch.name}" is the name of a larval batch here`)
    const { id: low } = await makes('Low shelf')
    expect(await act((work) => changeSubject(work, { id: low, name: 'TOP shelf' }))).toBe('invalid_input')
    // Its own name is its own, and a note alone asks for none.
    expect(await act((work) => changeSubject(work, { id, name: 'TOP shelf' }))).toBe('nothing')
    expect(await act((work) => changeSubject(work, { id, note: 'wobbles' }))).toBe('nothing')
    expect(await prisma().subject.findUniqueOrThrow({ where: { roomId_id: { roomId, id } } })).toMatchObject({
      ...{ name: 'TOP shelf', note: 'wobbles', version: 3 },
    })
    const next = await openRoom(world, { name: 'Elsewhere' })
    expect(await codeOf(makes('Top shelf', { ctx: ctxOf(next.owner), roomId: next.room.id }))).toBe('nothing')
  })

  test('is ended once, with the reason, and its name is free again', async () => {
    const { id } = await makes('Old shelf')
    const end = (subjectId: string) =>
      writeInRoom(frameOf(), (work) => endSubject(work, { id: subjectId, reason: 'rotten' }))
    await expect(end(randomUUID())).rejects.toMatchObject({
      code: 'not_found',
      message: expect.stringMatching(/^There is no such thing here/),
    })
    await writeInRoom(frameOf(), (work) => endSubject(work, { id, reason: 'rotten', detail: { into: 'fire' } }))
    expect(await auditOf(await revision())).toMatchObject([
      { action: 'tank.end', subjectId: id, detail: { reason: 'rotten', into: 'fire' } },
    ])
    expect(await prisma().subject.findUniqueOrThrow({ where: { roomId_id: { roomId, id } } })).toMatchObject({
      ...{ endedAt: new Date(world.clock.now()), endReason: 'rotten', version: 2 },
    })
    await expect(end(id)).rejects.toMatchObject({ code: 'wrong_state', message: 'Old shelf was ended already.' })
    expect(await codeOf(makes('Old shelf'))).toBe('nothing')
  })

  test('takes its open tasks along as it ends, and they say how it did', async () => {
    const reasons = async (name: string, how?: string) => {
      const body = { name, kind: 'rotifer', strain: 'L', volumeL: 18, temperatureC: 25, salinity: 20 } as const
      const { id } = await world.ok(full.caretaker, 'createCulture', { params: { roomId }, body })
      const tasks = { roomId, subjectId: id }
      expect(await prisma().task.count({ where: { ...tasks, state: 'open' } })).toBeGreaterThan(0)
      await writeInRoom(frameOf(), (work) => endSubject(work, { id, reason: 'by test', ...(how ? { how } : {}) }))
      expect(await prisma().task.count({ where: { ...tasks, state: 'open' } })).toBe(0)
      const closed = await prisma().task.findMany({ where: { ...tasks, state: 'withdrawn' } })
      return [...new Set(closed.map(({ reason }) => reason))]
    }
    expect(await reasons('R8')).toEqual(['R8 was ended'])
    expect(await reasons('R9', 'given away')).toEqual(['R9 was given away'])
  })

  test('is found by its id in its own room alone, what the write has just made too', async () => {
    const next = await openRoom(world, { name: 'Other bottles' })
    const [bottle] = await world.ok(next.owner, 'listConcentrates', { params: { roomId: next.room.id } })
    const [tank] = await world.ok(next.owner, 'listTanks', { params: { roomId: next.room.id } })
    await act(async (work) => {
      // Asked for first, when nothing is known of the room's things yet.
      expect(await findCard(work, tank!.id)).toBeNull()
    }).then((code) => expect(code).toBe('nothing'))
    await act(async (work) => {
      expect(await findCard(work, full.culture.id)).toMatchObject({ kind: 'culture', name: 'R1', volumeL: 18 })
      const id = await shelf('Found shelf')(work)
      expect(await findCard(work, id)).toMatchObject({ kind: 'tank', name: 'Found shelf' })
      // A batch holds the litres of its tank.
      expect(await findCard(work, full.batch.id)).toMatchObject({ kind: 'larval_batch', volumeL: 40 })
      expect(await findCard(work, tank!.id)).toBeNull()
      const asked = [full.concentrate.id, full.concentrate.id, bottle!.id]
      expect([
        await hasBottle(work, asked[0]!),
        await hasBottle(work, asked[1]!),
        await hasBottle(work, asked[2]!),
      ]).toEqual([...[true, true, false]])
    }).then((code) => expect(code).toBe('nothing'))
  })
})
