import * as z from 'zod/mini'
import { AuditPageSchema, AuditQuerySchema } from './audit.ts'
import { ChangeClutchSchema, ClutchSchema, NewClutchSchema } from './clutch.ts'
import { ChangeConcentrateSchema, ConcentrateSchema, NewConcentrateSchema } from './concentrate.ts'
import { ChangeCultureSchema, CultureOutlookSchema, CultureSchema, PostCultureSchema } from './culture.ts'
import { FactPageSchema, FactQuerySchema, FactSchema, NewFactSchema, StrikeFactSchema } from './fact.ts'
import { HandOverNoteSchema, HandOverSchema, LookedSchema, NewHandOverNoteSchema } from './hand-over.ts'
import { ChangeJuvenileGroupSchema, JuvenileGroupSchema, NewJuvenileGroupSchema } from './juvenile-group.ts'
import {
  ChangeLarvalBatchSchema,
  EndFeedLinkSchema,
  EndSchema,
  FeedLinkSchema,
  LarvalBatchSchema,
  NewFeedLinkSchema,
  NewLarvalBatchSchema,
} from './larval-batch.ts'
import { ChangePairSchema, NewPairSchema, PairSchema } from './pair.ts'
import {
  ChangeRoleSchema,
  ClaimSchema,
  CreatedInvitationSchema,
  InvitationPreviewSchema,
  InvitationSchema,
  JoinSchema,
  MeSchema,
  NewInvitationSchema,
  PersonSchema,
  ServerStatusSchema,
  TokenSchema,
  UserIdSchema,
} from './person.ts'
import { PhotoSchema } from './photo.ts'
import { IdSchema, PlainDateSchema } from './primitives.ts'
import { ChangeRoomSchema, RoomSchema, RoomSetupSchema } from './room.ts'
import { ChangeRuleSchema, RuleIdSchema, RulePreviewSchema, RuleSchema } from './rule.ts'
import { wholeInAddress, withDefault } from './shapes.ts'
import { SpeciesSummarySchema } from './species.ts'
import { ChangeTankSchema, NewTankSchema, TankSchema } from './tank.ts'
import { DaySchema, SignOffSchema, SkipSchema, TakeDutySchema, TaskSchema } from './task.ts'

/** What a role may do in a room; `anyone` needs no sign-in and `signed_in` no room. */
export const permissions = ['anyone', 'signed_in', 'read', 'sign_off', 'record', 'manage', 'own'] as const
export type Permission = (typeof permissions)[number]

/** Owners own, caretakers manage, stand-ins sign off and record, viewers read. */
export const permissionsOfRole = {
  owner: ['read', 'sign_off', 'record', 'manage', 'own'],
  caretaker: ['read', 'sign_off', 'record', 'manage'],
  stand_in: ['read', 'sign_off', 'record'],
  viewer: ['read'],
} as const satisfies Record<import('./vocabulary.ts').Role, readonly Permission[]>

export type Method = 'GET' | 'POST' | 'PATCH' | 'PUT' | 'DELETE'

export type Route<
  P extends z.ZodMiniType = z.ZodMiniType,
  Q extends z.ZodMiniType = z.ZodMiniType,
  B extends z.ZodMiniType = z.ZodMiniType,
  R extends z.ZodMiniType = z.ZodMiniType,
> = {
  method: Method
  path: string
  tag: string
  summary: string
  permission: Permission
  params: P
  query: Q
  body: B
  response: R
  status: number
}

const none = z.undefined()
const room = { roomId: IdSchema }

const get = <P extends z.core.$ZodShape, Q extends z.ZodMiniType, R extends z.ZodMiniType>(
  path: string,
  tag: string,
  route: { summary: string; permission: Permission; params?: P; query?: Q; response: R },
) => ({
  method: 'GET' as const,
  path,
  tag,
  summary: route.summary,
  permission: route.permission,
  params: z.strictObject((route.params ?? {}) as P),
  query: (route.query ?? z.strictObject({})) as Q,
  body: none,
  response: route.response,
  status: 200,
})

const write = <P extends z.core.$ZodShape, B extends z.ZodMiniType, R extends z.ZodMiniType>(
  method: Exclude<Method, 'GET'>,
  path: string,
  route: { tag: string; summary: string; permission: Permission; params?: P; body: B; response: R; status?: number },
) => ({
  method,
  path,
  tag: route.tag,
  summary: route.summary,
  permission: route.permission,
  params: z.strictObject((route.params ?? {}) as P),
  query: z.strictObject({}),
  body: route.body,
  response: route.response,
  status: route.status ?? (method === 'POST' ? 201 : 200),
})

const EmptySchema = z.strictObject({})
const OkSchema = z.object({ ok: z.literal(true) })

/** Every request the API answers, under /api/v1. The API registers these; the dashboard and the tests call them. */
export const routes = {
  // server and people
  getHealth: get('/health', 'server', {
    summary: 'Is the server up, and can it reach its database',
    permission: 'anyone',
    response: z.object({ status: z.literal('ok'), version: z.string(), now: z.string() }),
  }),
  getServer: get('/server', 'server', {
    summary: 'What a stranger may know',
    permission: 'anyone',
    response: ServerStatusSchema,
  }),
  claimServer: write('POST', '/claim', {
    tag: 'server',
    summary: 'Become the first owner with the one-time code',
    permission: 'anyone',
    body: ClaimSchema,
    response: OkSchema,
  }),
  getMe: get('/me', 'people', {
    summary: 'Who I am and which rooms I am in',
    permission: 'signed_in',
    response: MeSchema,
  }),
  getInvitationPreview: get('/invitations/:token', 'people', {
    summary: 'What an invitation link invites to',
    permission: 'anyone',
    params: { token: TokenSchema },
    response: InvitationPreviewSchema,
  }),
  joinByInvitation: write('POST', '/invitations/:token/join', {
    tag: 'people',
    summary: 'Make an account and join the room',
    permission: 'anyone',
    params: { token: TokenSchema },
    body: JoinSchema,
    response: z.object({ roomId: IdSchema }),
  }),
  acceptInvitation: write('POST', '/invitations/:token/accept', {
    tag: 'people',
    summary: 'Join the room as who I am',
    permission: 'signed_in',
    params: { token: TokenSchema },
    body: EmptySchema,
    response: z.object({ roomId: IdSchema }),
  }),
  listPeople: get('/rooms/:roomId/people', 'people', {
    summary: 'People of the room',
    permission: 'read',
    params: room,
    response: z.array(PersonSchema),
  }),
  changeRole: write('PATCH', '/rooms/:roomId/people/:userId', {
    tag: 'people',
    summary: 'Give somebody another role',
    permission: 'own',
    params: { ...room, userId: UserIdSchema },
    body: ChangeRoleSchema,
    response: PersonSchema,
  }),
  removePerson: write('DELETE', '/rooms/:roomId/people/:userId', {
    tag: 'people',
    summary: 'Take somebody out of the room',
    permission: 'own',
    params: { ...room, userId: UserIdSchema },
    body: none,
    response: OkSchema,
  }),
  listInvitations: get('/rooms/:roomId/invitations', 'people', {
    summary: 'Invitations of the room',
    permission: 'own',
    params: room,
    response: z.array(InvitationSchema),
  }),
  createInvitation: write('POST', '/rooms/:roomId/invitations', {
    tag: 'people',
    summary: 'Make an invitation link',
    permission: 'own',
    params: room,
    body: NewInvitationSchema,
    response: CreatedInvitationSchema,
  }),
  revokeInvitation: write('DELETE', '/rooms/:roomId/invitations/:invitationId', {
    tag: 'people',
    summary: 'Withdraw an invitation',
    permission: 'own',
    params: { ...room, invitationId: IdSchema },
    body: none,
    response: OkSchema,
  }),

  // the room and what it holds
  createRoom: write('POST', '/rooms', {
    tag: 'room',
    summary: 'Set up a room with its first vessels',
    permission: 'signed_in',
    body: RoomSetupSchema,
    response: RoomSchema,
  }),
  getRoom: get('/rooms/:roomId', 'room', {
    summary: 'The room',
    permission: 'read',
    params: room,
    response: RoomSchema,
  }),
  changeRoom: write('PATCH', '/rooms/:roomId', {
    tag: 'room',
    summary: 'Change the room',
    permission: 'own',
    params: room,
    body: ChangeRoomSchema,
    response: RoomSchema,
  }),
  listSpecies: get('/species', 'room', {
    summary: 'Known species',
    permission: 'signed_in',
    response: z.array(SpeciesSummarySchema),
  }),

  listTanks: get('/rooms/:roomId/tanks', 'tanks', {
    summary: 'Tanks',
    permission: 'read',
    params: room,
    response: z.array(TankSchema),
  }),
  createTank: write('POST', '/rooms/:roomId/tanks', {
    tag: 'tanks',
    summary: 'Add a tank',
    permission: 'manage',
    params: room,
    body: NewTankSchema,
    response: TankSchema,
  }),
  changeTank: write('PATCH', '/rooms/:roomId/tanks/:tankId', {
    tag: 'tanks',
    summary: 'Change a tank',
    permission: 'manage',
    params: { ...room, tankId: IdSchema },
    body: ChangeTankSchema,
    response: TankSchema,
  }),
  endTank: write('POST', '/rooms/:roomId/tanks/:tankId/end', {
    tag: 'tanks',
    summary: 'Take a tank out of use',
    permission: 'manage',
    params: { ...room, tankId: IdSchema },
    body: EndSchema,
    response: TankSchema,
    status: 200,
  }),

  listConcentrates: get('/rooms/:roomId/concentrates', 'concentrates', {
    summary: 'Bottles of microalgae concentrate',
    permission: 'read',
    params: room,
    response: z.array(ConcentrateSchema),
  }),
  createConcentrate: write('POST', '/rooms/:roomId/concentrates', {
    tag: 'concentrates',
    summary: 'Add a bottle',
    permission: 'manage',
    params: room,
    body: NewConcentrateSchema,
    response: ConcentrateSchema,
  }),
  changeConcentrate: write('PATCH', '/rooms/:roomId/concentrates/:concentrateId', {
    tag: 'concentrates',
    summary: 'Change a bottle',
    permission: 'manage',
    params: { ...room, concentrateId: IdSchema },
    body: ChangeConcentrateSchema,
    response: ConcentrateSchema,
  }),

  listCultures: get('/rooms/:roomId/cultures', 'cultures', {
    summary: 'Cultures',
    permission: 'read',
    params: room,
    response: z.array(CultureSchema),
  }),
  createCulture: write('POST', '/rooms/:roomId/cultures', {
    tag: 'cultures',
    summary: 'Start a culture',
    permission: 'manage',
    params: room,
    body: PostCultureSchema,
    response: CultureSchema,
  }),
  changeCulture: write('PATCH', '/rooms/:roomId/cultures/:cultureId', {
    tag: 'cultures',
    summary: 'Change a culture',
    permission: 'manage',
    params: { ...room, cultureId: IdSchema },
    body: ChangeCultureSchema,
    response: CultureSchema,
  }),
  endCulture: write('POST', '/rooms/:roomId/cultures/:cultureId/end', {
    tag: 'cultures',
    summary: 'End a culture',
    permission: 'manage',
    params: { ...room, cultureId: IdSchema },
    body: EndSchema,
    response: CultureSchema,
    status: 200,
  }),
  getCultureOutlook: get('/rooms/:roomId/cultures/:cultureId/outlook', 'cultures', {
    summary: 'Density behind and ahead, under a stated daily harvest',
    permission: 'read',
    params: { ...room, cultureId: IdSchema },
    query: z.strictObject({
      harvestShare: z.optional(z.coerce.number().check(z.minimum(0), z.maximum(0.9))),
      days: withDefault(wholeInAddress(1, 21), 10),
    }),
    response: CultureOutlookSchema,
  }),

  listPairs: get('/rooms/:roomId/pairs', 'pairs', {
    summary: 'Pairs',
    permission: 'read',
    params: room,
    response: z.array(PairSchema),
  }),
  createPair: write('POST', '/rooms/:roomId/pairs', {
    tag: 'pairs',
    summary: 'Add a pair',
    permission: 'manage',
    params: room,
    body: NewPairSchema,
    response: PairSchema,
  }),
  changePair: write('PATCH', '/rooms/:roomId/pairs/:pairId', {
    tag: 'pairs',
    summary: 'Change a pair',
    permission: 'manage',
    params: { ...room, pairId: IdSchema },
    body: ChangePairSchema,
    response: PairSchema,
  }),
  endPair: write('POST', '/rooms/:roomId/pairs/:pairId/end', {
    tag: 'pairs',
    summary: 'End a pair',
    permission: 'manage',
    params: { ...room, pairId: IdSchema },
    body: EndSchema,
    response: PairSchema,
    status: 200,
  }),

  listClutches: get('/rooms/:roomId/clutches', 'clutches', {
    summary: 'Clutches, newest first, with the nights they may hatch',
    permission: 'read',
    params: room,
    response: z.array(ClutchSchema),
  }),
  createClutch: write('POST', '/rooms/:roomId/clutches', {
    tag: 'clutches',
    summary: 'Record eggs laid',
    permission: 'record',
    params: room,
    body: NewClutchSchema,
    response: ClutchSchema,
  }),
  changeClutch: write('PATCH', '/rooms/:roomId/clutches/:clutchId', {
    tag: 'clutches',
    summary: 'Say what is meant with a clutch',
    permission: 'manage',
    params: { ...room, clutchId: IdSchema },
    body: ChangeClutchSchema,
    response: ClutchSchema,
  }),

  listLarvalBatches: get('/rooms/:roomId/larval-batches', 'larval batches', {
    summary: 'Larval batches',
    permission: 'read',
    params: room,
    response: z.array(LarvalBatchSchema),
  }),
  createLarvalBatch: write('POST', '/rooms/:roomId/larval-batches', {
    tag: 'larval batches',
    summary: 'Record a hatch: larvae of one or more clutches in a tank',
    permission: 'record',
    params: room,
    body: NewLarvalBatchSchema,
    response: LarvalBatchSchema,
  }),
  changeLarvalBatch: write('PATCH', '/rooms/:roomId/larval-batches/:batchId', {
    tag: 'larval batches',
    summary: 'Change a larval batch',
    permission: 'manage',
    params: { ...room, batchId: IdSchema },
    body: ChangeLarvalBatchSchema,
    response: LarvalBatchSchema,
  }),
  endLarvalBatch: write('POST', '/rooms/:roomId/larval-batches/:batchId/end', {
    tag: 'larval batches',
    summary: 'End a larval batch',
    permission: 'manage',
    params: { ...room, batchId: IdSchema },
    body: EndSchema,
    response: LarvalBatchSchema,
    status: 200,
  }),

  listFeedLinks: get('/rooms/:roomId/feed-links', 'feed links', {
    summary: 'Which batch is fed from which culture',
    permission: 'read',
    params: room,
    response: z.array(FeedLinkSchema),
  }),
  createFeedLink: write('POST', '/rooms/:roomId/feed-links', {
    tag: 'feed links',
    summary: 'Feed a batch from a culture',
    permission: 'manage',
    params: room,
    body: NewFeedLinkSchema,
    response: FeedLinkSchema,
  }),
  endFeedLink: write('PATCH', '/rooms/:roomId/feed-links/:feedLinkId', {
    tag: 'feed links',
    summary: 'Stop feeding a batch from a culture',
    permission: 'manage',
    params: { ...room, feedLinkId: IdSchema },
    body: EndFeedLinkSchema,
    response: FeedLinkSchema,
  }),

  listJuvenileGroups: get('/rooms/:roomId/juvenile-groups', 'juvenile groups', {
    summary: 'Juvenile groups',
    permission: 'read',
    params: room,
    response: z.array(JuvenileGroupSchema),
  }),
  createJuvenileGroup: write('POST', '/rooms/:roomId/juvenile-groups', {
    tag: 'juvenile groups',
    summary: 'Record settled fish moved to grow-out',
    permission: 'record',
    params: room,
    body: NewJuvenileGroupSchema,
    response: JuvenileGroupSchema,
  }),
  changeJuvenileGroup: write('PATCH', '/rooms/:roomId/juvenile-groups/:groupId', {
    tag: 'juvenile groups',
    summary: 'Change a juvenile group',
    permission: 'manage',
    params: { ...room, groupId: IdSchema },
    body: ChangeJuvenileGroupSchema,
    response: JuvenileGroupSchema,
  }),
  endJuvenileGroup: write('POST', '/rooms/:roomId/juvenile-groups/:groupId/end', {
    tag: 'juvenile groups',
    summary: 'End a juvenile group',
    permission: 'manage',
    params: { ...room, groupId: IdSchema },
    body: EndSchema,
    response: JuvenileGroupSchema,
    status: 200,
  }),

  // hand-over and photos
  getHandOver: get('/rooms/:roomId/hand-over', 'hand-over', {
    summary: 'What the next caretaker needs to know',
    permission: 'read',
    params: room,
    response: HandOverSchema,
  }),
  markLooked: write('PUT', '/rooms/:roomId/hand-over/looked', {
    tag: 'hand-over',
    summary: 'I have read up to this revision',
    permission: 'read',
    params: room,
    body: LookedSchema,
    response: OkSchema,
  }),
  writeNote: write('POST', '/rooms/:roomId/notes', {
    tag: 'hand-over',
    summary: 'Write a hand-over note or a worry',
    permission: 'record',
    params: room,
    body: NewHandOverNoteSchema,
    response: HandOverNoteSchema,
  }),
  settleWorry: write('POST', '/rooms/:roomId/notes/:noteId/settle', {
    tag: 'hand-over',
    summary: 'A worry is over',
    permission: 'record',
    params: { ...room, noteId: IdSchema },
    body: EmptySchema,
    response: HandOverNoteSchema,
    status: 200,
  }),
  listPhotos: get('/rooms/:roomId/photos', 'photos', {
    summary: 'Photos of the room or of one of its things, newest first',
    permission: 'read',
    params: room,
    query: z.strictObject({ subjectId: z.optional(IdSchema) }),
    response: z.array(PhotoSchema),
  }),
  strikePhoto: write('DELETE', '/rooms/:roomId/photos/:photoId', {
    tag: 'photos',
    summary: 'Take a photo off its record',
    permission: 'record',
    params: { ...room, photoId: IdSchema },
    body: none,
    response: OkSchema,
  }),

  // what happened
  listFacts: get('/rooms/:roomId/facts', 'facts', {
    summary: 'What happened, newest first',
    permission: 'read',
    params: room,
    query: FactQuerySchema,
    response: FactPageSchema,
  }),
  recordFact: write('POST', '/rooms/:roomId/facts', {
    tag: 'facts',
    summary: 'Record a fact without a task',
    permission: 'record',
    params: room,
    body: NewFactSchema,
    response: FactSchema,
  }),
  strikeFact: write('POST', '/rooms/:roomId/facts/:factId/strike', {
    tag: 'facts',
    summary: 'Strike out a mistake, with a reason',
    permission: 'record',
    params: { ...room, factId: IdSchema },
    body: StrikeFactSchema,
    response: FactSchema,
    status: 200,
  }),
  listAudit: get('/rooms/:roomId/audit', 'facts', {
    summary: 'Who wrote what, newest first',
    permission: 'read',
    params: room,
    query: AuditQuerySchema,
    response: AuditPageSchema,
  }),

  // what is due
  getDay: get('/rooms/:roomId/days/:date', 'tasks', {
    summary: "A day's list; `today` and `tomorrow` are dates too",
    permission: 'read',
    params: { ...room, date: z.union([PlainDateSchema, z.enum(['today', 'tomorrow'])]) },
    response: DaySchema,
  }),
  takeDuty: write('PUT', '/rooms/:roomId/days/:date/duty', {
    tag: 'tasks',
    summary: 'Say who has the room on a day',
    permission: 'sign_off',
    params: { ...room, date: PlainDateSchema },
    body: TakeDutySchema,
    response: DaySchema,
    status: 200,
  }),
  getTask: get('/rooms/:roomId/tasks/:taskId', 'tasks', {
    summary: 'One task',
    permission: 'read',
    params: { ...room, taskId: IdSchema },
    response: TaskSchema,
  }),
  signOffTask: write('POST', '/rooms/:roomId/tasks/:taskId/sign-off', {
    tag: 'tasks',
    summary: 'Done, with what was measured',
    permission: 'sign_off',
    params: { ...room, taskId: IdSchema },
    body: SignOffSchema,
    response: TaskSchema,
    status: 200,
  }),
  skipTask: write('POST', '/rooms/:roomId/tasks/:taskId/skip', {
    tag: 'tasks',
    summary: 'Not done, and why',
    permission: 'sign_off',
    params: { ...room, taskId: IdSchema },
    body: SkipSchema,
    response: TaskSchema,
    status: 200,
  }),
  undoTask: write('POST', '/rooms/:roomId/tasks/:taskId/undo', {
    tag: 'tasks',
    summary: 'Take back a sign-off or a skip, within a quarter of an hour',
    permission: 'sign_off',
    params: { ...room, taskId: IdSchema },
    body: EmptySchema,
    response: TaskSchema,
    status: 200,
  }),

  // rules
  listRules: get('/rooms/:roomId/rules', 'rules', {
    summary: 'The rules with their parameters and sources',
    permission: 'read',
    params: room,
    response: z.array(RuleSchema),
  }),
  previewRule: write('POST', '/rooms/:roomId/rules/:ruleId/preview', {
    tag: 'rules',
    summary: "What a change would make of tomorrow's list; nothing is saved",
    permission: 'manage',
    params: { ...room, ruleId: RuleIdSchema },
    body: ChangeRuleSchema,
    response: RulePreviewSchema,
    status: 200,
  }),
  changeRule: write('PUT', '/rooms/:roomId/rules/:ruleId', {
    tag: 'rules',
    summary: 'Switch a rule or change its parameters',
    permission: 'manage',
    params: { ...room, ruleId: RuleIdSchema },
    body: ChangeRuleSchema,
    response: RuleSchema,
  }),
} as const satisfies Record<string, Route>

export type RouteId = keyof typeof routes
export type RouteOf<K extends RouteId> = (typeof routes)[K]
export type ParamsOf<K extends RouteId> = z.infer<RouteOf<K>['params']>
export type QueryOf<K extends RouteId> = z.infer<RouteOf<K>['query']>
export type BodyOf<K extends RouteId> = z.infer<RouteOf<K>['body']>
/** What a caller may send: defaults may be left out. */
export type BodyInputOf<K extends RouteId> = z.input<RouteOf<K>['body']>
export type ResponseOf<K extends RouteId> = z.infer<RouteOf<K>['response']>

/** Server-sent events of a room, outside the table because their answer is a stream of `RoomEvent`. */
export const eventsPath = '/rooms/:roomId/events'

/** One file with everything on the server, streamed; for whoever claimed it. */
export const backupPath = '/backup'
