import { sendingSecretOf, vapidKeysOf, webhookSecretOf } from '@fryward/notify'
import * as room from '@fryward/room'
import type { BodyOf, ParamsOf, QueryOf, ResponseOf, RouteId, RouteOf } from '@fryward/shared'
import type { BackupMaker } from '../backups.ts'
import type { Disk } from '../disk.ts'
import { type Download, growingFile, textFile } from '../download.ts'
import type { FoodDesk } from '../food-desk.ts'
import { keptBy, type PhotoStore, pictureIn } from '../photo-store.ts'
import type { Feed } from '../plugins/event-streams.ts'
import { bytesOf } from '../posted-bytes.ts'
import { readServerState } from '../server-state.ts'
import { assertUncommon } from '../sign-in/common-passwords.ts'
import type { Door } from '../sign-in/door.ts'
import { hashPassword } from '../sign-in/password-hash.ts'

/** What stands around every request of this server. */
export type Surroundings = {
  publicUrl: string
  version: string
  secret: string
  photos: PhotoStore | null
  backups: BackupMaker
  disk: Disk | null
  troublesFile: string | null
  /** Whether this server sends mail. */
  isMailSetUp: boolean
  /** Who works out what becomes of a room's food. */
  food: FoodDesk
  /** Who keeps what devices send. */
  keeper: room.ReadingsKeeper
}

/** What a handler gets: the use case's context, and the parts of the request as its schemas left them. */
export type Call<K extends RouteId> = Surroundings & {
  ctx: room.Context
  door: Door
  params: ParamsOf<K>
  query: QueryOf<K>
  /** What the request says of its body. */
  sent: { type: string; isGzipped: boolean }
  /** The bytes themselves where the route takes some. */
  body: RouteOf<K> extends { kind: 'bytes'; method: 'POST' } ? Buffer | undefined : BodyOf<K>
}
type AnswerOf<K extends RouteId> =
  RouteOf<K> extends { kind: 'stream' }
    ? Feed
    : RouteOf<K> extends { kind: 'bytes'; method: 'GET' }
      ? Download
      : ResponseOf<K>
export type Handlers = { [K in RouteId]: (call: Call<K>) => Promise<AnswerOf<K>> }

// Hashing a password is made to be slow: it is done for whoever has brought a code or an invitation that is good.
const accountOf = async ({
  name,
  email,
  password,
}: {
  name: string
  email: string
  password: string
}): Promise<room.NewAccount> => {
  assertUncommon(password)
  return { name, email, passwordHash: await hashPassword(password) }
}

const reachingOf = ({ isMailSetUp, secret }: Pick<Surroundings, 'isMailSetUp' | 'secret'>) => ({
  isMailSetUp,
  pushKey: vapidKeysOf(sendingSecretOf(secret)).publicKey,
})

const webhookSecretsOf = (secret: string) => (id: string) => webhookSecretOf(sendingSecretOf(secret), id)

const done = async (work: Promise<void>): Promise<{ ok: true }> => {
  await work
  return { ok: true }
}

/** One line a route: path and schemas stand in `shared`, the work in `@fryward/room`. */
export const handlers: Handlers = {
  getAlive: async ({ ctx, version }) => ({ status: 'ok', version, now: ctx.now }),
  getHealth: async ({ ctx, version }) => {
    await ctx.database.pool.query('SELECT 1')
    return { status: 'ok', version, now: ctx.now }
  },
  getServer: ({ ctx, version, isMailSetUp }) => room.getServerStatus({ ctx, version, sendsMail: isMailSetUp }),
  claimServer: async ({ ctx, body }) => {
    await room.assertClaimable({ ctx, code: body.code })
    return room.claimServer({ ctx, code: body.code, account: await accountOf(body) })
  },
  downloadBackup: async ({ ctx, backups }) => backups.write(ctx.now),
  getServerState: ({ ctx, disk, troublesFile }) => readServerState({ disk, troublesFile, now: ctx.now }),
  listSignIns: ({ ctx }) => room.listSignInTries({ ctx }),
  signIn: ({ door, body }) => door.signIn(body),
  signInWithCode: ({ door, body }) => done(door.signInWithCode(body.code)),
  signInAgain: ({ ctx, door, body }) => done(door.signInAgain(ctx, body)),
  // Whoever has not was refused before.
  getSignedInAgain: async () => ({ ok: true }),
  signOut: ({ door }) => done(door.signOut()),

  changePassword: ({ ctx, door, body }) => done(door.changePassword(ctx, body)),
  askForNewPassword: ({ door, body, isMailSetUp }) => done(door.askForNewPassword(body.email, isMailSetUp)),
  getPasswordReset: ({ ctx, params }) => room.getPasswordReset({ ctx, ...params }),
  giveNewPassword: ({ ctx, door, params, body }) => done(door.giveNewPassword(ctx, { ...params, ...body })),
  createResetLink: ({ ctx, door, body, publicUrl }) => door.createResetLink(ctx, { ...body, publicUrl }),
  listSessions: ({ ctx }) => room.listSessions({ ctx }),
  endSession: ({ ctx, door, params }) => room.endSession({ ctx, ...params }).finally(door.forgetSessions),
  endOtherSessions: ({ ctx, door }) => room.endOtherSessions({ ctx }).finally(door.forgetSessions),
  leaveRoom: ({ ctx, params }) => room.leaveRoom({ ctx, ...params }),
  listMySignIns: async ({ ctx }) => room.listSignInTries({ ctx, email: (await room.getMe({ ctx })).user.email }),
  beginSecondFactor: ({ door, body }) => door.beginSecondFactor(body.password),
  confirmSecondFactor: ({ ctx, door, body }) => done(door.confirmSecondFactor(ctx, body.code)),
  endSecondFactor: ({ door, body }) => done(door.endSecondFactor(body.password)),

  getMe: ({ ctx }) => room.getMe({ ctx }),
  getInvitationPreview: ({ ctx, params }) => room.getInvitationPreview({ ctx, ...params }),
  joinByInvitation: async ({ ctx, params, body }) => {
    await room.getInvitationPreview({ ctx, ...params })
    return room.joinByInvitation({ ctx, ...params, account: await accountOf(body) })
  },
  acceptInvitation: ({ ctx, params }) => room.acceptInvitation({ ctx, ...params }),
  listPeople: ({ ctx, params }) => room.listPeople({ ctx, ...params }),
  changeRole: ({ ctx, params, body }) => room.changeRole({ ctx, ...params, role: body.role }),
  removePerson: ({ ctx, params }) => room.removePerson({ ctx, ...params }),
  listInvitations: ({ ctx, params }) => room.listInvitations({ ctx, ...params }),
  createInvitation: ({ ctx, params, body, publicUrl, secret }) =>
    room.createInvitation({ ctx, ...params, input: body, token: room.invitationToken(ctx, secret), publicUrl }),
  revokeInvitation: ({ ctx, params }) => room.revokeInvitation({ ctx, ...params }),

  createRoom: ({ ctx, body }) => room.createRoom({ ctx, input: body }),
  getRoom: ({ ctx, params }) => room.getRoom({ ctx, ...params }),
  changeRoom: ({ ctx, params, body }) => room.changeRoom({ ctx, ...params, input: body }),
  listenToRoom: async ({ ctx, params }) => ({
    ...params,
    newest: await room.currentRevision({ ctx, ...params }),
    after: (ctx, afterRevision) => room.listEvents({ ctx, ...params, afterRevision }),
  }),
  changeOtherSpecies: ({ ctx, params, body }) => room.changeOtherSpecies({ ctx, ...params, input: body }),
  listSpecies: async () => room.listSpecies(),

  listTanks: ({ ctx, params }) => room.listTanks({ ctx, ...params }),
  createTank: ({ ctx, params, body }) => room.createTank({ ctx, ...params, input: body }),
  changeTank: ({ ctx, params, body }) => room.changeTank({ ctx, ...params, input: body }),
  endTank: ({ ctx, params, body }) => room.endTank({ ctx, ...params, input: body }),

  listConcentrates: ({ ctx, params }) => room.listConcentrates({ ctx, ...params }),
  createConcentrate: ({ ctx, params, body }) => room.createConcentrate({ ctx, ...params, input: body }),
  changeConcentrate: ({ ctx, params, body }) => room.changeConcentrate({ ctx, ...params, input: body }),

  listCultures: ({ ctx, params }) => room.listCultures({ ctx, ...params }),
  createCulture: ({ ctx, params, body }) => room.createCulture({ ctx, ...params, input: body }),
  changeCulture: ({ ctx, params, body }) => room.changeCulture({ ctx, ...params, input: body }),
  endCulture: ({ ctx, params, body }) => room.endCulture({ ctx, ...params, input: body }),
  getCultureOutlook: ({ ctx, params, query }) => room.getCultureOutlook({ ctx, ...params, query }),

  listPairs: ({ ctx, params }) => room.listPairs({ ctx, ...params }),
  createPair: ({ ctx, params, body }) => room.createPair({ ctx, ...params, input: body }),
  changePair: ({ ctx, params, body }) => room.changePair({ ctx, ...params, input: body }),
  endPair: ({ ctx, params, body }) => room.endPair({ ctx, ...params, input: body }),

  listClutches: ({ ctx, params }) => room.listClutches({ ctx, ...params }),
  createClutch: ({ ctx, params, body }) => room.createClutch({ ctx, ...params, input: body }),
  changeClutch: ({ ctx, params, body }) => room.changeClutch({ ctx, ...params, input: body }),

  listLarvalBatches: ({ ctx, params }) => room.listLarvalBatches({ ctx, ...params }),
  createLarvalBatch: ({ ctx, params, body }) => room.createLarvalBatch({ ctx, ...params, input: body }),
  changeLarvalBatch: ({ ctx, params, body }) => room.changeLarvalBatch({ ctx, ...params, input: body }),
  endLarvalBatch: ({ ctx, params, body }) => room.endLarvalBatch({ ctx, ...params, input: body }),

  listFeedsToday: ({ ctx, params }) => room.listFeedsToday({ ctx, ...params }),
  listFeedLinks: ({ ctx, params }) => room.listFeedLinks({ ctx, ...params }),
  createFeedLink: ({ ctx, params, body }) => room.createFeedLink({ ctx, ...params, input: body }),
  endFeedLink: ({ ctx, params, body }) => room.endFeedLink({ ctx, ...params, input: body }),

  listJuvenileGroups: ({ ctx, params }) => room.listJuvenileGroups({ ctx, ...params }),
  createJuvenileGroup: ({ ctx, params, body }) => room.createJuvenileGroup({ ctx, ...params, input: body }),
  changeJuvenileGroup: ({ ctx, params, body }) => room.changeJuvenileGroup({ ctx, ...params, input: body }),
  endJuvenileGroup: ({ ctx, params, body }) => room.endJuvenileGroup({ ctx, ...params, input: body }),

  getSurvival: ({ ctx, params, query }) => room.getSurvival({ ctx, ...params, query }),
  compareSurvival: ({ ctx, params, query }) => room.compareSurvival({ ctx, ...params, query }),
  downloadSurvival: async ({ ctx, params, query }) => textFile(await room.getSurvivalFile({ ctx, ...params, query })),
  getClutchLife: ({ ctx, params }) => room.getClutchLife({ ctx, ...params }),
  getPedigree: ({ ctx, params }) => room.getPedigree({ ctx, ...params }),
  getPairToBe: ({ ctx, params, query }) => room.getPairToBe({ ctx, ...params, query }),

  getFood: async ({ ctx, params, food }) => {
    const view = await room.getFood({ ctx, ...params })
    if (!view.plan || view.plan.isStale) food.want(params.roomId)
    return view
  },
  askWhatIf: ({ ctx, params, body, food }) => room.askWhatIf({ ctx, ...params, input: body, thinker: food.thinker }),

  getHandOver: ({ ctx, params }) => room.getHandOver({ ctx, ...params }),
  markLooked: ({ ctx, params, body }) => room.markLooked({ ctx, ...params, revision: body.revision }),
  writeNote: ({ ctx, params, body }) => room.writeNote({ ctx, ...params, input: body }),
  settleWorry: ({ ctx, params }) => room.settleWorry({ ctx, ...params }),
  listPhotos: ({ ctx, params, query }) => room.listPhotos({ ctx, ...params, ...query }),
  addPhoto: ({ ctx, params, query, body, photos }) =>
    room.addPhoto({ ctx, ...params, input: query, store: () => keptBy(photos).store(pictureIn(body)) }),
  getPhotoFile: async ({ ctx, params: { size, ...photo }, photos }) =>
    keptBy(photos).open({ ...(await room.getPhotoFile({ ctx, ...photo })), size }),
  listLooks: ({ ctx, params }) => room.listLooks({ ctx, ...params }),
  markPhoto: ({ ctx, params, body }) => room.markPhoto({ ctx, ...params, ...body }),
  strikePhoto: ({ ctx, params }) => room.strikePhoto({ ctx, ...params }),

  listFacts: ({ ctx, params, query }) => room.listFacts({ ctx, ...params, query }),
  recordFact: ({ ctx, params, body }) => room.recordFact({ ctx, ...params, input: body }),
  strikeFact: ({ ctx, params, body }) => room.strikeFact({ ctx, ...params, reason: body.reason }),
  listAudit: ({ ctx, params, query }) => room.listAudit({ ctx, ...params, query }),

  listDevices: ({ ctx, params }) => room.listDevices({ ctx, ...params }),
  createDevice: ({ ctx, params, body, secret }) =>
    room.createDevice({ ctx, ...params, input: body, token: room.deviceToken(ctx, secret) }),
  changeDevice: ({ ctx, params, body }) => room.changeDevice({ ctx, ...params, input: body }),
  getBroker: ({ ctx, params }) => room.getBroker({ ctx, ...params }),
  changeBroker: ({ ctx, params, body, secret }) => room.changeBroker({ ctx, ...params, secret, input: body }),
  revokeDevice: ({ ctx, params }) => room.revokeDevice({ ctx, ...params }),
  createGauge: ({ ctx, params, body }) => room.createGauge({ ctx, ...params, input: body }),
  changeGauge: ({ ctx, params, body }) => room.changeGauge({ ctx, ...params, input: body }),
  endGauge: ({ ctx, params }) => room.endGauge({ ctx, ...params }),
  previewReadings: ({ ctx, params, body }) => room.previewReadings({ ctx, ...params, text: body.text }),
  importReadings: ({ ctx, params, body }) => room.importReadings({ ctx, ...params, text: body.text }),
  undoReadings: ({ ctx, params }) => room.undoReadings({ ctx, ...params }),
  getSeries: ({ ctx, params, query }) => room.getSeries({ ctx, ...params, query }),
  listMarks: ({ ctx, params, query }) => room.listMarks({ ctx, ...params, query }),
  listAlarms: ({ ctx, params }) => room.listAlarms({ ctx, ...params }),
  acknowledgeAlarm: ({ ctx, params }) => room.acknowledgeAlarm({ ctx, ...params }),
  quietAlarm: ({ ctx, params, body }) => room.quietAlarm({ ctx, ...params, ...body }),
  handAlarm: ({ ctx, params, body }) => room.handAlarm({ ctx, ...params, ...body }),
  listMessages: ({ ctx, params }) => room.listMessages({ ctx, ...params }),
  listAbsences: ({ ctx, params }) => room.listAbsences({ ctx, ...params }),
  getReach: ({ ctx, params, ...server }) => room.getReach({ ctx, ...params, reaching: reachingOf(server) }),
  changeReach: ({ ctx, params, body, ...server }) =>
    room.changeReach({ ctx, ...params, input: body, reaching: reachingOf(server) }),
  addPhone: ({ ctx, params, body, ...server }) =>
    room.addPhone({ ctx, ...params, input: body, reaching: reachingOf(server) }),
  removePhone: ({ ctx, params, ...server }) => room.removePhone({ ctx, ...params, reaching: reachingOf(server) }),
  sendTrial: ({ ctx, params, isMailSetUp }) => room.sendTrial({ ctx, ...params, isMailSetUp }),
  getWebhook: ({ ctx, params, secret }) => room.getWebhook({ ctx, ...params, secretOf: webhookSecretsOf(secret) }),
  changeWebhook: ({ ctx, params, body, secret }) =>
    room.changeWebhook({ ctx, ...params, input: body, secretOf: webhookSecretsOf(secret) }),
  postReadings: async ({ ctx, keeper, body, sent }) =>
    room.postReadings({ ctx, keeper, type: sent.type, bytes: await bytesOf(body, sent) }),

  downloadRecords: async ({ ctx, params, query }) => growingFile(await room.exportRecords({ ctx, ...params, query })),
  previewImport: ({ ctx, params, body }) => room.previewImport({ ctx, ...params, text: body.text }),
  importCounts: ({ ctx, params, body }) => room.importCounts({ ctx, ...params, text: body.text }),
  undoImport: ({ ctx, params }) => room.undoImport({ ctx, ...params }),

  reopenThing: ({ ctx, params, body }) => room.reopenThing({ ctx, ...params, input: body }),
  restoreFact: ({ ctx, params }) => room.restoreFact({ ctx, ...params }),
  restoreGauge: ({ ctx, params }) => room.restoreGauge({ ctx, ...params }),
  restoreDevice: ({ ctx, params }) => room.restoreDevice({ ctx, ...params }),

  getDay: ({ ctx, params }) => room.getDay({ ctx, ...params }),
  takeDuty: ({ ctx, params, body }) => room.takeDuty({ ctx, ...params, input: body }),
  getTask: ({ ctx, params }) => room.getTask({ ctx, ...params }),
  getTaskWhy: ({ ctx, params }) => room.getTaskWhy({ ctx, ...params }),
  signOffTask: ({ ctx, params, body }) => room.signOffTask({ ctx, ...params, input: body }),
  skipTask: ({ ctx, params, body }) => room.skipTask({ ctx, ...params, reason: body.reason }),
  undoTask: ({ ctx, params }) => room.undoTask({ ctx, ...params }),

  listRules: ({ ctx, params }) => room.listRules({ ctx, ...params }),
  previewRule: ({ ctx, params, body }) => room.previewRule({ ctx, ...params, input: body }),
  changeRule: ({ ctx, params, body }) => room.changeRule({ ctx, ...params, input: body }),
}
