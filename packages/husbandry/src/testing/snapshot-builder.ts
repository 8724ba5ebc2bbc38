import type { FactKind, factDataSchemas, Instant, PlainDate } from '@fryward/shared'
import { defaultRounds, factDataSchemas as schemas } from '@fryward/shared'
import type { z } from 'zod'
import { type DayDrafts, draftDay, type TaskDraft } from '../engine/draft-day.ts'
import type { Fact, FactDraft } from '../facts/fact.ts'
import type { Rule } from '../rule/rule.ts'
import type {
  RoomSettings,
  RoomSnapshot,
  RuleSetting,
  SnapshotBatch,
  SnapshotClutch,
  SnapshotConcentrate,
  SnapshotCulture,
  SnapshotGroup,
  SnapshotPair,
  SnapshotTank,
} from '../snapshot/room-snapshot.ts'
import { wholeDrafts } from './whole-draft.ts'

/** Ids that sort in the order in which they were made, like the UUIDv7 of the real rooms. */
export function idMaker(start = 0): () => string {
  let made = start
  return () => `00000000-0000-7000-8000-${(++made).toString(16).padStart(12, '0')}`
}

/** A room for tests: UTC, three rounds at 07:00, 12:30 and 18:30, lights 07:00 to 19:00, 35 at 26 C. */
export class SnapshotBuilder {
  readonly nextId: () => string
  readonly snapshot: RoomSnapshot
  /** Facts as they came, for whoever follows the room and empties it. */
  readonly fresh: Fact[] = []

  constructor(room: Partial<RoomSettings> = {}, nextId = idMaker()) {
    this.nextId = nextId
    this.snapshot = {
      room: {
        id: nextId(),
        name: 'Room',
        timeZone: 'UTC',
        units: 'metric',
        lightsOnAt: '07:00',
        lightsOffAt: '19:00',
        rounds: defaultRounds,
        salinity: 35,
        temperatureC: 26,
        ...room,
      },
      tanks: [],
      cultures: [],
      concentrates: [],
      pairs: [],
      clutches: [],
      batches: [],
      groups: [],
      feedLinks: [],
      foodPlan: null,
      facts: [],
      ruleSettings: {},
    }
  }

  concentrate(given: Partial<SnapshotConcentrate> = {}): SnapshotConcentrate {
    const made = { id: this.nextId(), name: 'the bottle', cellsPerMl: 65e9, openedOn: null, useBy: null, ...given }
    this.snapshot.concentrates.push(made)
    return made
  }

  culture(given: Partial<SnapshotCulture> & Pick<SnapshotCulture, 'startedAt'>): SnapshotCulture {
    const made: SnapshotCulture = {
      id: this.nextId(),
      name: `R${this.snapshot.cultures.length + 1}`,
      kind: 'rotifer',
      strain: 'L',
      volumeL: 18,
      temperatureC: 25,
      salinity: 25,
      hasFilter: false,
      isBackup: false,
      concentrateId: this.snapshot.concentrates[0]?.id ?? null,
      parentCultureId: null,
      airLine: null,
      shelf: null,
      tools: null,
      ...given,
    }
    this.snapshot.cultures.push(made)
    return made
  }

  tank(given: Partial<SnapshotTank> = {}): SnapshotTank {
    const made: SnapshotTank = {
      id: this.nextId(),
      name: `T${this.snapshot.tanks.length + 1}`,
      kind: 'larval',
      volumeL: 20,
      temperatureC: 27,
      salinity: 30,
      hasFilter: false,
      // Lit as the room is, whatever the tank is for.
      lightHours: (given.kind ?? 'larval') === 'larval' ? 12 : null,
      ...given,
    }
    this.snapshot.tanks.push(made)
    return made
  }

  pair(given: Partial<SnapshotPair> = {}): SnapshotPair {
    const made: SnapshotPair = {
      id: this.nextId(),
      name: `Pair ${this.snapshot.pairs.length + 1}`,
      species: 'amphiprion-ocellaris',
      tankId: given.tankId ?? this.tank({ kind: 'broodstock', volumeL: 100, salinity: 35 }).id,
      nestSite: 'the pot',
      formedOn: null,
      isResting: false,
      ...given,
    }
    this.snapshot.pairs.push(made)
    return made
  }

  clutch(pair: SnapshotPair, given: Partial<SnapshotClutch> & { spawnedAt: Instant; eggs?: number }): SnapshotClutch {
    const { eggs, ...rest } = given
    const made: SnapshotClutch = {
      id: this.nextId(),
      name: `${pair.name} clutch ${this.snapshot.clutches.length + 1}`,
      pairId: pair.id,
      species: pair.species,
      care: 'nest',
      tankId: pair.tankId,
      intent: 'raise_all',
      ...rest,
    }
    this.snapshot.clutches.push(made)
    this.fact('spawning', made.id, given.spawnedAt, eggs === undefined ? {} : { eggs })
    return made
  }

  batch(given: Partial<SnapshotBatch> & { hatchedOn: PlainDate; larvae?: number }): SnapshotBatch {
    const { larvae, ...rest } = given
    const made: SnapshotBatch = {
      id: this.nextId(),
      name: `Batch ${this.snapshot.batches.length + 1}`,
      species: 'amphiprion-ocellaris',
      tankId: given.tankId ?? this.tank().id,
      clutchIds: [],
      ...rest,
    }
    this.snapshot.batches.push(made)
    const data = { hatchedOn: given.hatchedOn, batchId: made.id, ...(larvae === undefined ? {} : { larvae }) }
    this.fact('hatch', made.id, `${given.hatchedOn}T20:00:00.000Z`, data)
    return made
  }

  group(given: Partial<SnapshotGroup> & { settledOn: PlainDate; number?: number }): SnapshotGroup {
    const { number, ...rest } = given
    const made: SnapshotGroup = {
      id: this.nextId(),
      name: `Group ${this.snapshot.groups.length + 1}`,
      species: 'amphiprion-ocellaris',
      tankId: given.tankId ?? this.tank({ kind: 'grow_out', volumeL: 120 }).id,
      fromBatchId: null,
      hatchedOn: this.snapshot.batches.find(({ id }) => id === given.fromBatchId)?.hatchedOn ?? null,
      ...rest,
    }
    this.snapshot.groups.push(made)
    if (number !== undefined)
      this.fact('count', made.id, `${given.settledOn}T09:00:00.000Z`, { of: 'juveniles', animals: [number] })
    return made
  }

  feedLink(batch: SnapshotBatch, culture: SnapshotCulture, fromOn: PlainDate = batch.hatchedOn): void {
    this.snapshot.feedLinks.push({ id: this.nextId(), batchId: batch.id, cultureId: culture.id, fromOn, untilOn: null })
  }

  setting(ruleId: string, setting: Partial<RuleSetting>): void {
    this.snapshot.ruleSettings[ruleId] = { isOn: true, parameters: {}, ...setting }
  }

  /** Writes down a fact at its place in time; `taskId` when a sign-off wrote it. */
  fact<K extends FactKind>(
    kind: K,
    subjectId: string,
    at: Instant,
    data: z.input<(typeof factDataSchemas)[K]>,
    { taskId = null, id = this.nextId() }: { taskId?: string | null; id?: string } = {},
  ): Fact {
    return this.append({ kind, subjectId, data } as FactDraft, { at, taskId, id })
  }

  /** A culture's count of so many animals a replicate, in 1 mL each. */
  count(culture: SnapshotCulture, at: Instant, animals: number[], more: { eggs?: number; females?: number } = {}) {
    return this.fact('count', culture.id, at, { of: 'culture', animals, volumeMl: 1, ...more })
  }

  append(
    draft: FactDraft,
    { at, taskId = null, id = this.nextId() }: { at: Instant; taskId?: string | null; id?: string },
  ) {
    const data = schemas[draft.kind].parse(draft.data)
    const fact = {
      id,
      kind: draft.kind,
      subjectId: draft.subjectId,
      at,
      recordedByName: 'Ana',
      taskId,
      data,
    } as Fact
    const { facts } = this.snapshot
    const after = facts.findLastIndex((each) => each.at < at || (each.at === at && each.id < id))
    facts.splice(after + 1, 0, fact)
    this.fresh.push(fact)
    return fact
  }

  /** The snapshot as a loader hands it over: its own lists, so that nothing remembered of an earlier one clings to it. */
  build(): RoomSnapshot {
    const { facts, ...rest } = this.snapshot
    return { ...structuredClone(rest), facts: [...facts] }
  }

  drafts(date: PlainDate, rules: readonly Rule[]): DayDrafts {
    return wholeDrafts(draftDay({ snapshot: this.build(), date, rules }))
  }
}

/** The one draft that a single rule gives on a date; fails with the gaps when there is not exactly one. */
export function onlyDraft({ drafts, gaps }: DayDrafts): TaskDraft {
  if (drafts.length !== 1)
    throw new Error(
      `Expected one draft, got ${drafts.length}: ${JSON.stringify({ gaps, titles: drafts.map((d) => d.content.title) })}`,
    )
  return drafts[0]!
}

/** What signing off a draft records, with nothing typed unless `values` says so; fails where a fact may not be so. */
export function signOff(rule: Rule, draft: TaskDraft, values: Record<string, unknown> = {}, doneAt = draft.dueAt) {
  const { context, content, subjectId } = draft
  const recorded = rule.record({ context, content, values, doneAt, subjectId })
  for (const { kind, data } of recorded.facts) schemas[kind].parse(data)
  return recorded
}
