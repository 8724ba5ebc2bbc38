import { randomUUID } from 'node:crypto'
import { hashPassword } from '@fryward/api/password-hash'
import { recordKnock } from '@fryward/room'
import { PhotoSchema, type RouteId, SecondFactorSchema } from '@fryward/shared'
import { z } from 'zod'
import { type Person, roomSetup, type World } from '../support/world.ts'
import { codeOf, secretIn } from './authenticator.ts'
import { cookieOf } from './door.ts'
import { type FullRoom, minutesFrom } from './full-room.ts'
import { picture } from './picture.ts'
import { type RawRequest, send } from './send.ts'

/** What a request is written for: the room it asks, who sends it, and a number that makes its names new. */
export type Writing = { world: World; full: FullRoom; as: Person; serial: number }

/** One valid request of every route, made for the room as it is at this moment. */
export async function validRequest(id: RouteId, writing: Writing): Promise<RawRequest> {
  const write: (writing: Writing) => RawRequest | Promise<RawRequest> = requests[id]
  return write(writing)
}

const inRoom = ({ full }: Writing, more: Record<string, string> = {}) => ({ roomId: full.roomId, ...more })

async function versionOf({ world, full }: Writing, id: string): Promise<number> {
  const row = await world.database.prisma.subject.findUniqueOrThrow({
    where: { roomId_id: { roomId: full.roomId, id } },
  })
  return row.version
}

/** What a request of that kind makes, asked for by the owner: something nobody has ended, linked or struck out yet. */
async function made(
  id: 'createTank' | 'createCulture' | 'createPair' | 'createLarvalBatch' | 'createFeedLink',
  writing: Writing,
) {
  const { json, text } = await send(writing.world, writing.full.owner, id, await validRequest(id, writing))
  const parsed = MadeSchema.safeParse(json)
  if (!parsed.success) throw new Error(`${id} was refused: ${text}`)
  return parsed.data
}
const MadeSchema = z.object({ id: z.string(), version: z.number() })

const end = (param: string, creation: Parameters<typeof made>[0]) => async (writing: Writing) => {
  const { id, version } = await made(creation, writing)
  return { params: inRoom(writing, { [param]: id }), body: { reason: 'no longer needed', version } }
}
const change =
  (param: string, thing: 'pairTank' | 'culture' | 'pair' | 'clutch' | 'batch', body: object) =>
  async (writing: Writing) => {
    const { id } = writing.full[thing]
    return { params: inRoom(writing, { [param]: id }), body: { ...body, version: await versionOf(writing, id) } }
  }

async function invitationOf({ world, full }: Writing): Promise<{ token: string; id: string }> {
  const made = await world.ok(full.owner, 'createInvitation', {
    params: { roomId: full.roomId },
    body: { role: 'viewer' },
  })
  return { id: made.id, token: made.link.split('/').at(-1) ?? '' }
}

/** A device with one gauge in the larval tank, let in by the owner. */
async function deviceOf({ world, full }: Writing) {
  const { device, token } = await world.ok(full.owner, 'createDevice', {
    params: { roomId: full.roomId },
    body: { name: `Probe ${randomUUID().slice(0, 8)}` },
  })
  const gauge = await world.ok(full.owner, 'createGauge', {
    params: { roomId: full.roomId, deviceId: device.id },
    body: { key: 't1', quantity: 'temperature', subjectId: full.larvalTank.id, low: 24, high: 28 },
  })
  return { device, token, gauge }
}

const reading = (token: string): RawRequest => ({
  headers: { authorization: `Bearer ${token}` },
  bytes: { type: 'application/json', data: Buffer.from('[{"gauge":"t1","value":25.4},{"gauge":"t2","value":1}]') },
})

async function alarmOf(writing: Writing): Promise<{ id: string }> {
  const { world, full } = writing
  const { gauge } = await deviceOf(writing)
  const alarm = { roomId: full.roomId, id: randomUUID(), gaugeId: gauge.id, kind: 'too_high' as const, value: 29 }
  return world.database.prisma.alarm.create({ data: { ...alarm, raisedAt: world.clock.now() } })
}

async function newcomer({ world, full, serial }: Writing): Promise<string> {
  return (await world.person(`Newcomer ${serial}`, { roomId: full.roomId, role: 'viewer' })).userId
}

async function taskOf({ world, full }: Writing, ruleId: string): Promise<{ id: string; state: string }> {
  return world.database.prisma.task.findFirstOrThrow({
    // A day to come is for reading.
    where: { roomId: full.roomId, ruleId, onDate: { lte: new Date(world.clock.now().slice(0, 10)) } },
    orderBy: [{ dueAt: 'desc' }, { id: 'asc' }],
  })
}

/** A task of the rule that nobody has closed; what somebody closed is taken back first. */
async function openTask(writing: Writing, ruleId: string): Promise<{ taskId: string }> {
  const { world, full } = writing
  const { id: taskId, state } = await taskOf(writing, ruleId)
  if (state !== 'open') await world.ok(full.owner, 'undoTask', { params: { roomId: full.roomId, taskId }, body: {} })
  return { taskId }
}

/** A task that who asks has just signed off. */
async function doneTask(writing: Writing): Promise<{ taskId: string }> {
  const { taskId } = await openTask(writing, 'room-equipment')
  const params = { roomId: writing.full.roomId, taskId }
  await writing.world.ok(await recorder(writing), 'signOffTask', { params, body: {} })
  return { taskId }
}

async function groupOf({ world, full, serial }: Writing): Promise<{ id: string; version: number }> {
  return world.ok(full.owner, 'createJuvenileGroup', {
    params: { roomId: full.roomId },
    body: {
      name: `Group for ${serial}`,
      tankId: full.larvalTank.id,
      species: 'amphiprion-ocellaris',
      settledOn: world.clock.now().slice(0, 10),
      number: 12,
    },
  })
}

async function worryOf({ world, full }: Writing): Promise<string> {
  const body = { text: 'the heater hums', isWorry: true }
  return (await world.ok(full.owner, 'writeNote', { params: { roomId: full.roomId }, body })).id
}

/** Who asks, or the owner where they may record nothing. */
async function recorder({ world, full, as }: Writing): Promise<Person> {
  const membership = await world.database.prisma.membership.findFirst({
    where: { roomId: full.roomId, userId: as.userId, role: { not: 'viewer' } },
  })
  return membership ? as : full.owner
}

const smallPicture = picture({ width: 40, height: 30 })
const aPhoto = (full: FullRoom): RawRequest => ({
  params: { roomId: full.roomId },
  query: { subjectId: full.pair.id, caption: 'the nest' },
  bytes: { type: 'image/png', data: smallPicture },
})

async function photoOf(writing: Writing): Promise<string> {
  const { json } = await send(writing.world, await recorder(writing), 'addPhoto', aPhoto(writing.full))
  return PhotoSchema.parse(json).id
}

async function factOf(writing: Writing): Promise<string> {
  const { world, full } = writing
  const recorded = await world.ok(await recorder(writing), 'recordFact', {
    params: { roomId: full.roomId },
    body: { kind: 'observation', subjectId: full.pair.id, data: { note: 'seen by mistake' } },
  })
  return recorded.id
}

const ruleSetting = async (writing: Writing) => {
  const { world, full } = writing
  const last = await world.database.prisma.ruleChange.findFirst({
    where: { roomId: full.roomId, ruleId: 'pair-feed' },
    orderBy: { version: 'desc' },
  })
  return {
    params: inRoom(writing, { ruleId: 'pair-feed' }),
    body: { isOn: true, parameters: {}, version: last?.version ?? 0 },
  }
}

const theirPassword = 'long enough 1'
const theirHash = hashPassword(theirPassword)

/** Whoever asks, with a password of their own and no second factor. */
async function havePassword({ world, as }: Writing): Promise<string> {
  const { userId } = as
  const now = world.clock.now()
  const password = await theirHash
  await world.database.prisma.twoFactor.deleteMany({ where: { userId } })
  await world.database.prisma.user.update({ where: { id: userId }, data: { twoFactorEnabled: false } })
  await world.database.prisma.account.upsert({
    where: { id: userId },
    create: {
      ...{ id: userId, userId, accountId: userId, providerId: 'credential', password },
      ...{ createdAt: now, updatedAt: now },
    },
    update: { password },
  })
  return theirPassword
}

async function otherSession({ world, as, serial }: Writing): Promise<string> {
  const id = randomUUID()
  const now = new Date()
  await world.database.prisma.session.create({
    data: {
      ...{ id, userId: as.userId, token: randomUUID(), ipAddress: `10.5.0.${serial % 250}`, userAgent: 'A desk' },
      ...{ expiresAt: new Date(now.getTime() + 86_400_000), createdAt: now, updatedAt: now },
    },
  })
  return id
}

async function knocked({ world, as }: Writing): Promise<RawRequest> {
  const knock = { email: as.email, address: '10.6.6.6', browser: 'A phone', isKnown: false }
  await recordKnock({ ctx: world.contextOf(as), knock, outcome: 'wrong_password' })
  return {}
}

/** The secret of an authenticator that whoever asks has begun to set up. */
async function beginSecondFactor(writing: Writing): Promise<string> {
  const { json, text } = await send(writing.world, writing.as, 'beginSecondFactor', {
    body: { password: await havePassword(writing) },
    remoteAddress: addressFor(writing),
  })
  const uri = SecondFactorSchema.safeParse(json).data?.uri
  if (!uri) throw new Error(`beginSecondFactor was refused: ${text}`)
  return secretIn(uri)
}

/** Somebody new who signs in with a second factor. */
async function withSecondFactor(writing: Writing): Promise<{ email: string; secret: string }> {
  const as = await writing.world.person(`Has a phone ${writing.serial}`)
  const secret = await beginSecondFactor({ ...writing, as })
  const { status, text } = await send(writing.world, as, 'confirmSecondFactor', {
    body: { code: codeOf(secret) },
    remoteAddress: addressFor(writing),
  })
  if (status !== 200) throw new Error(`confirmSecondFactor was refused: ${text}`)
  return { email: as.email, secret }
}

const addressFor = ({ serial }: Writing) => `10.7.${Math.floor(serial / 250)}.${(serial % 250) + 1}`

const requests: Record<RouteId, (writing: Writing) => RawRequest | Promise<RawRequest>> = {
  getHealth: () => ({}),
  getServer: () => ({}),
  claimServer: ({ serial }) => ({
    body: {
      code: 'AAAA-BBBB-CCCC',
      name: 'Claimant',
      email: `claim-${serial}@example.test`,
      password: 'long enough 1',
    },
  }),
  downloadBackup: () => ({}),
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
      body: { code: codeOf(secret) },
      headers: { cookie: cookieOf(answer) },
      remoteAddress: addressFor(writing),
    }
  },
  signOut: () => ({ body: {} }),
  getServerState: () => ({}),
  listSignIns: knocked,
  changePassword: async (writing) => ({
    body: { current: await havePassword(writing), wanted: 'another one, long enough' },
  }),
  listSessions: () => ({}),
  endSession: async (writing) => ({ params: { sessionId: await otherSession(writing) } }),
  endOtherSessions: () => ({}),
  listMySignIns: knocked,
  beginSecondFactor: async (writing) => ({ body: { password: await havePassword(writing) } }),
  confirmSecondFactor: async (writing) => ({ body: { code: codeOf(await beginSecondFactor(writing)) } }),
  endSecondFactor: async (writing) => ({ body: { password: await havePassword(writing) } }),
  getMe: () => ({}),
  getInvitationPreview: async (writing) => ({ params: { token: (await invitationOf(writing)).token } }),
  joinByInvitation: async (writing) => ({
    params: { token: (await invitationOf(writing)).token },
    body: { name: `Joiner ${writing.serial}`, email: `join-${writing.serial}@example.test`, password: 'long enough 1' },
  }),
  acceptInvitation: async (writing) => ({ params: { token: (await invitationOf(writing)).token }, body: {} }),
  listPeople: (writing) => ({ params: inRoom(writing) }),
  changeRole: async (writing) => ({
    params: inRoom(writing, { userId: await newcomer(writing) }),
    body: { role: 'stand_in' },
  }),
  removePerson: async (writing) => ({ params: inRoom(writing, { userId: await newcomer(writing) }) }),
  leaveRoom: async (writing) => {
    // A room keeps an owner, whoever leaves it.
    await writing.world.person(`Stays ${writing.serial}`, { roomId: writing.full.roomId, role: 'owner' })
    return { params: inRoom(writing) }
  },
  listInvitations: (writing) => ({ params: inRoom(writing) }),
  createInvitation: (writing) => ({ params: inRoom(writing), body: { role: 'viewer', daysValid: 3 } }),
  revokeInvitation: async (writing) => ({
    params: inRoom(writing, { invitationId: (await invitationOf(writing)).id }),
  }),

  createRoom: ({ serial }) => ({
    body: {
      ...roomSetup,
      name: `Room ${serial}`,
      tanks: [{ name: 'T', kind: 'larval', volumeL: 40, temperatureC: 26, salinity: 30 }],
    },
  }),
  listDevices: (writing) => ({ params: inRoom(writing) }),
  createDevice: (writing) => ({ params: inRoom(writing), body: { name: `Device ${writing.serial}` } }),
  revokeDevice: async (writing) => ({
    params: inRoom(writing, { deviceId: (await deviceOf(writing)).device.id }),
    body: {},
  }),
  createGauge: async (writing) => ({
    params: inRoom(writing, { deviceId: (await deviceOf(writing)).device.id }),
    body: { key: 'ph-1', quantity: 'ph', subjectId: writing.full.larvalTank.id },
  }),
  changeGauge: async (writing) => {
    const { gauge } = await deviceOf(writing)
    return { params: inRoom(writing, { gaugeId: gauge.id }), body: { high: 27, version: gauge.version } }
  },
  endGauge: async (writing) => ({
    params: inRoom(writing, { gaugeId: (await deviceOf(writing)).gauge.id }),
    body: {},
  }),
  getSeries: async (writing) => {
    const { gauge, token } = await deviceOf(writing)
    await send(writing.world, null, 'postReadings', reading(token))
    return {
      params: inRoom(writing, { gaugeId: gauge.id }),
      query: { from: minutesFrom(writing.world, -60), to: minutesFrom(writing.world, 1) },
    }
  },
  listAlarms: (writing) => ({ params: inRoom(writing) }),
  acknowledgeAlarm: async (writing) => ({
    params: inRoom(writing, { alarmId: (await alarmOf(writing)).id }),
    body: {},
  }),
  postReadings: async (writing) => reading((await deviceOf(writing)).token),

  getRoom: (writing) => ({ params: inRoom(writing) }),
  changeRoom: async (writing) => ({
    params: inRoom(writing),
    body: {
      salinity: 34,
      version: (await writing.world.database.prisma.room.findUniqueOrThrow({ where: { id: writing.full.roomId } }))
        .version,
    },
  }),
  listenToRoom: (writing) => ({ params: inRoom(writing) }),
  listSpecies: () => ({}),

  listTanks: (writing) => ({ params: inRoom(writing) }),
  createTank: (writing) => ({
    params: inRoom(writing),
    body: { name: `Tank ${writing.serial}`, kind: 'storage', volumeL: 100, temperatureC: 25, salinity: 33 },
  }),
  changeTank: change('tankId', 'pairTank', { temperatureC: 26 }),
  endTank: end('tankId', 'createTank'),

  listConcentrates: (writing) => ({ params: inRoom(writing) }),
  createConcentrate: (writing) => ({
    params: inRoom(writing),
    body: { name: `Bottle ${writing.serial}`, cellsPerMl: 6e10, openedOn: '2026-03-01', useBy: '2026-06-01' },
  }),
  changeConcentrate: async (writing) => ({
    params: inRoom(writing, { concentrateId: writing.full.concentrate.id }),
    body: {
      useBy: '2026-07-01',
      version: (
        await writing.world.database.prisma.concentrate.findUniqueOrThrow({
          where: { roomId_id: { roomId: writing.full.roomId, id: writing.full.concentrate.id } },
        })
      ).version,
    },
  }),

  listCultures: (writing) => ({ params: inRoom(writing) }),
  createCulture: (writing) => ({
    params: inRoom(writing),
    body: {
      ...{
        name: `Culture ${writing.serial}`,
        kind: 'rotifer',
        strain: 'L',
        volumeL: 20,
        temperatureC: 25,
        salinity: 20,
      },
      concentrateId: writing.full.concentrate.id,
      parentCultureId: writing.full.culture.id,
      startDensityPerMl: 80,
      startedAt: minutesFrom(writing.world, -60),
    },
  }),
  changeCulture: change('cultureId', 'culture', { temperatureC: 26 }),
  endCulture: end('cultureId', 'createCulture'),
  getCultureOutlook: (writing) => ({
    params: inRoom(writing, { cultureId: writing.full.culture.id }),
    query: { days: '3', harvestShare: '0.2' },
  }),

  listPairs: (writing) => ({ params: inRoom(writing) }),
  createPair: (writing) => ({
    params: inRoom(writing),
    body: { name: `Pair ${writing.serial}`, species: 'amphiprion-ocellaris', tankId: writing.full.larvalTank.id },
  }),
  changePair: change('pairId', 'pair', { isResting: false }),
  endPair: end('pairId', 'createPair'),

  listClutches: (writing) => ({ params: inRoom(writing) }),
  createClutch: (writing) => ({
    params: inRoom(writing),
    body: {
      pairId: writing.full.pair.id,
      name: `Clutch ${writing.serial}`,
      spawnedAt: minutesFrom(writing.world, -30),
      eggs: 200,
    },
  }),
  changeClutch: change('clutchId', 'clutch', { intent: 'raise_all' }),

  listLarvalBatches: (writing) => ({ params: inRoom(writing) }),
  createLarvalBatch: (writing) => ({
    params: inRoom(writing),
    body: {
      name: `Batch ${writing.serial}`,
      tankId: writing.full.larvalTank.id,
      species: 'amphiprion-ocellaris',
      hatchedOn: writing.world.clock.now().slice(0, 10),
      larvae: 100,
    },
  }),
  changeLarvalBatch: change('batchId', 'batch', { note: 'looks well' }),
  endLarvalBatch: end('batchId', 'createLarvalBatch'),

  listFeedLinks: (writing) => ({ params: inRoom(writing) }),
  createFeedLink: async (writing) => ({
    params: inRoom(writing),
    body: {
      batchId: writing.full.batch.id,
      cultureId: (await made('createCulture', writing)).id,
      fromOn: writing.world.clock.now().slice(0, 10),
    },
  }),
  endFeedLink: async (writing) => {
    const { id, version } = await made('createFeedLink', writing)
    return {
      params: inRoom(writing, { feedLinkId: id }),
      body: { untilOn: writing.world.clock.now().slice(0, 10), version },
    }
  },

  listJuvenileGroups: (writing) => ({ params: inRoom(writing) }),
  createJuvenileGroup: (writing) => ({
    params: inRoom(writing),
    body: {
      name: `Group ${writing.serial}`,
      tankId: writing.full.larvalTank.id,
      fromBatchId: writing.full.batch.id,
      settledOn: writing.world.clock.now().slice(0, 10),
      number: 1,
    },
  }),
  changeJuvenileGroup: async (writing) => {
    const { id, version } = await groupOf(writing)
    return { params: inRoom(writing, { groupId: id }), body: { note: 'eating well', version } }
  },
  endJuvenileGroup: async (writing) => {
    const { id, version } = await groupOf(writing)
    return { params: inRoom(writing, { groupId: id }), body: { reason: 'all placed', version } }
  },

  getSurvival: (writing) => ({ params: inRoom(writing), query: { from: '2026-01-01', to: '2026-12-31' } }),
  compareSurvival: (writing) => ({ params: inRoom(writing), query: { by: 'pair' } }),
  downloadSurvival: (writing) => ({ params: inRoom(writing), query: { decimal: 'comma' } }),
  getClutchLife: (writing) => ({ params: inRoom(writing, { clutchId: writing.full.batch.clutchIds[0]! }) }),
  getPedigree: (writing) => ({ params: inRoom(writing) }),
  getPairToBe: (writing) => ({
    params: inRoom(writing),
    query: { femaleFromClutchId: writing.full.clutch.id, maleOfPairId: writing.full.pair.id },
  }),

  getHandOver: (writing) => ({ params: inRoom(writing) }),
  markLooked: (writing) => ({ params: inRoom(writing), body: { revision: 1 } }),
  writeNote: (writing) => ({
    params: inRoom(writing),
    body: { text: 'fed a little more', isWorry: false, subjectId: writing.full.pair.id },
  }),
  settleWorry: async (writing) => ({ params: inRoom(writing, { noteId: await worryOf(writing) }), body: {} }),
  listPhotos: (writing) => ({ params: inRoom(writing), query: { subjectId: writing.full.pair.id } }),
  addPhoto: ({ full }) => aPhoto(full),
  getPhotoFile: async (writing) => ({
    params: inRoom(writing, { photoId: await photoOf(writing), size: 'thumbnail' }),
  }),
  strikePhoto: async (writing) => ({ params: inRoom(writing, { photoId: await photoOf(writing) }) }),

  listFacts: (writing) => ({ params: inRoom(writing), query: { limit: '20' } }),
  recordFact: (writing) => ({
    params: inRoom(writing),
    body: { kind: 'observation', subjectId: writing.full.pair.id, data: { signs: ['all_well'] } },
  }),
  strikeFact: async (writing) => ({
    params: inRoom(writing, { factId: await factOf(writing) }),
    body: { reason: 'the wrong tank' },
  }),
  listAudit: (writing) => ({ params: inRoom(writing), query: { limit: '20' } }),

  takeDuty: (writing) => ({ params: inRoom(writing, { date: '2027-03-11' }), body: { userId: writing.as.userId } }),
  getDay: (writing) => ({ params: inRoom(writing, { date: 'today' }) }),
  getTask: async (writing) => ({ params: inRoom(writing, { taskId: (await taskOf(writing, 'room-equipment')).id }) }),
  signOffTask: async (writing) => ({
    params: inRoom(writing, await openTask(writing, 'room-equipment')),
    body: { values: {} },
  }),
  skipTask: async (writing) => ({
    params: inRoom(writing, await openTask(writing, 'pair-feed')),
    body: { reason: 'the fish are resting' },
  }),
  undoTask: async (writing) => ({ params: inRoom(writing, await doneTask(writing)), body: {} }),

  listRules: (writing) => ({ params: inRoom(writing) }),
  getFood: (writing) => ({ params: inRoom(writing) }),
  askWhatIf: (writing) => ({ params: inRoom(writing), body: { changes: [{ kind: 'away', days: 2 }] } }),
  previewRule: ruleSetting,
  changeRule: ruleSetting,
}
