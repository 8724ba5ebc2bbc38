import * as z from 'zod/mini'
import { NewPhotoQuerySchema } from '../photo.ts'
import { IdSchema } from '../primitives.ts'
import type { RouteId } from '../routes.ts'

/**
 * Writes that a person means in a room and need not wait for: a device keeps each as a command until it was answered.
 * Their shapes stand in the table of routes, once.
 */
export const commandRouteIds = [
  'signOffTask',
  'skipTask',
  'undoTask',
  'takeDuty',
  'recordFact',
  'strikeFact',
  'writeNote',
  'settleWorry',
  'markLooked',
  'strikePhoto',
  'markPhoto',
  'createTank',
  'changeTank',
  'endTank',
  'createConcentrate',
  'changeConcentrate',
  'createCulture',
  'changeCulture',
  'endCulture',
  'createPair',
  'changePair',
  'endPair',
  'createClutch',
  'changeClutch',
  'createLarvalBatch',
  'changeLarvalBatch',
  'endLarvalBatch',
  'createFeedLink',
  'endFeedLink',
  'createJuvenileGroup',
  'changeJuvenileGroup',
  'endJuvenileGroup',
  'changeRoom',
  'changeRule',
  'createGauge',
  'changeGauge',
  'endGauge',
  'acknowledgeAlarm',
  'reopenThing',
  'restoreFact',
  'restoreGauge',
] as const satisfies readonly RouteId[]

/** Writes that are sent at once or not at all, each with why it cannot wait on a device. */
export const sentAtOnce = {
  signIn: 'whose queue it would be is what it asks, and it carries a password',
  signInWithCode: 'whose queue it would be is what it asks, and its code is of this half minute',
  signInAgain: 'it carries a password, and what is meant waits for it',
  signOut: 'who reads along must not look gone while they are not',
  claimServer: 'there is no person yet whose queue could hold it, and it carries a password',
  joinByInvitation: 'there is no person yet whose queue could hold it, and it carries a password',
  acceptInvitation: 'its answer says which room opens next',
  createRoom: 'its answer says which room opens next',
  createInvitation: 'its answer is a secret link to hand on now',
  revokeInvitation: 'who can get in must not look decided while it is not',
  changeRole: 'who may do what must not look decided while it is not',
  removePerson: 'who can get in must not look decided while it is not',
  changePassword: 'it carries passwords, and whoever waits for it would not know which of them holds',
  askForNewPassword: 'there is no person yet whose queue could hold it',
  giveNewPassword: 'there is no person yet whose queue could hold it, and it carries a password',
  createResetLink: 'its answer is a secret link to hand on now',
  endSession: 'a browser must not look signed out while it is not',
  endOtherSessions: 'a browser must not look signed out while it is not',
  leaveRoom: 'who reads along must not look gone while they are not',
  beginSecondFactor: 'it carries a password, and its answer is a secret to keep now',
  confirmSecondFactor: 'its code is of this half minute',
  endSecondFactor: 'it carries a password',
  previewImport: 'it is a question and changes nothing',
  importCounts: 'it is looked at line by line first, and by then the room may be another',
  undoImport: 'what it takes back must not look gone while it is not',
  previewRule: 'it is a question and changes nothing',
  askWhatIf: 'it is a question and changes nothing',
  createDevice: 'its answer is a token to keep now',
  changeBroker: 'it carries a password, and who is heard must not look decided while it is not',
  changeDevice: 'what can post must not look let in while it is not',
  revokeDevice: 'what can post must not look shut out while it is not',
  restoreDevice: 'what can post must not look let in while it is not',
  quietAlarm: 'who is woken must not look decided while it is not',
  handAlarm: 'who is woken must not look decided while it is not',
  changeReach: 'whoever thinks that they are told must be',
  addPhone: 'whoever thinks that they are told must be',
  removePhone: 'whoever thinks that they are told must be',
  sendTrial: 'whoever tries waits for it',
  changeWebhook: 'its answer is a secret to keep now',
  postReadings: 'a device sends it, by a token of its own',
} as const satisfies Partial<Record<RouteId, string>>

/** A photo is bytes with its words in the query: as a command it carries both. */
export const addPhotoShape = {
  params: z.strictObject({ roomId: IdSchema }),
  body: z.extend(NewPhotoQuerySchema, {
    image: z.custom<Blob>((value) => value instanceof Blob, 'the picture itself'),
  }),
}
