import {
  type Culture,
  CultureSchema,
  type Fact,
  FactSchema,
  HandOverSchema,
  type NewFact,
  type Room,
  RoomSchema,
  stations,
  type Task,
  type TaskField,
  TaskSchema,
} from '@fryward/shared'

let ids = 0
/** A new id each time, of the shape that the contract asks for. */
export const newId = () => `00000000-0000-7000-8000-${String(++ids).padStart(12, '0')}`

/** A room as its owner sees it; invented. */
export const makeRoom = (part: Partial<Room> = {}): Room =>
  RoomSchema.parse({
    ...{ id: newId(), name: 'Back room', timeZone: 'Europe/Lisbon', units: 'metric', locale: 'en-GB' },
    ...{ lightsOnAt: '08:00', lightsOffAt: '20:00', rounds: [{ id: 'morning', name: 'Morning', at: '07:00' }] },
    ...{ stationOrder: [...stations], salinity: 35, temperatureC: 26, isDemo: false, revision: 1, version: 1 },
    ...{ asksSecondFactor: false },
    ...{ myRole: 'owner', ...part },
  })

/** An open task that asks for these values; invented. */
export const makeTask = (fields: TaskField[], part: Partial<Task> = {}): Task =>
  TaskSchema.parse({
    ...{
      id: newId(),
      key: 'made-up',
      ruleId: 'rotifer-count',
      ruleTitle: 'Count the rotifers',
      ordinal: 0,
      version: 1,
    },
    ...{ subject: { id: newId(), kind: 'culture', name: 'R1' }, station: 'live_food', verb: 'count' },
    ...{ title: { text: 'Count', quantities: {} }, amount: null, amountOf: null, steps: [], cautions: [] },
    ...{ fields, onDate: '2026-11-25', roundId: 'morning', state: 'open', isForStandIn: true, reason: null },
    ...{ dueAt: '2026-11-25T07:00:00.000Z', lateAt: '2026-11-25T09:00:00.000Z', closesAt: '2026-11-26T05:00:00.000Z' },
    ...{ closedByName: null, closedAt: null, signOffs: [], lastValues: {}, changes: [], ...part },
  })

/** A rotifer culture in use; invented. */
export const makeCulture = (part: Partial<Culture> = {}): Culture =>
  CultureSchema.parse({
    ...{ id: newId(), name: 'R1', kind: 'rotifer', strain: 'L', volumeL: 20, temperatureC: 26, salinity: 25 },
    ...{ hasFilter: false, isBackup: false, concentrateId: null, parentCultureId: null, note: '', version: 1 },
    ...{
      startedAt: '2026-11-01T08:00:00.000Z',
      endedAt: null,
      endReason: null,
      endCause: null,
      densityNow: null,
      ...part,
    },
  })

/** What the API keeps of a fact that was just recorded. */
export const keepFact = (body: NewFact): Fact =>
  FactSchema.parse({
    ...{ id: newId(), subjectKind: 'culture', at: '2026-11-25T08:00:00.000Z', receivedAt: '2026-11-25T08:00:00.000Z' },
    ...{ recordedByName: 'Carla', taskId: null, struckAt: null, struckByName: null, struckReason: null, revision: 2 },
    ...body,
  })

/** Nothing to hand over. */
export const quietHandOver = HandOverSchema.parse({
  ...{ lastLookedAt: null, sinceRevision: 0, revision: 1, since: [], notDone: [], notes: [], signs: [], losses: [] },
  ...{ coming: [], worries: [] },
})
