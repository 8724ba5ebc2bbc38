import type { Random } from '@fryward/live-feed'
import type { TaskField } from '@fryward/shared'
import { expect } from 'vitest'
import { checkValues } from '../engine/check-values.ts'
import type { TaskDraft } from '../engine/draft-day.ts'
import type { Creation, Rule } from '../rule/rule.ts'
import { between, pick } from './random-room.ts'
import type { SnapshotBuilder } from './snapshot-builder.ts'
import { signOff } from './snapshot-builder.ts'

export type Eye = {
  densityPerMl: (draft: TaskDraft, field: TaskField & { type: 'count' }) => number
  /** What a sensible keeper answers where chance would not do; undefined for anything. */
  answer?: (draft: TaskDraft, field: TaskField) => unknown
  /** What a number reads where it is out of the ordinary; undefined for about its usual value. */
  unusual?: (draft: TaskDraft, field: TaskField & { type: 'number' }) => number | undefined
}

/** What a caretaker might type: every required field and some of the others, within what is allowed. */
export function typedValues(draft: TaskDraft, random: Random, eye: Eye): Record<string, unknown> {
  const values: Record<string, unknown> = {}
  for (const field of draft.content.fields) {
    const answer = eye.answer?.(draft, field)
    if (answer !== undefined) {
      values[field.name] = answer
      continue
    }
    if (!field.isRequired && !isUnusual(field, draft, eye) && random.uniform() < 0.6) continue
    const value = typed(field, draft, random, eye)
    if (value !== undefined) values[field.name] = value
  }
  return values
}

const isUnusual = (field: TaskField, draft: TaskDraft, eye: Eye): boolean =>
  field.type === 'number' && eye.unusual?.(draft, field) !== undefined

function typed(field: TaskField, draft: TaskDraft, random: Random, eye: Eye): unknown {
  switch (field.type) {
    case 'number': {
      const unusual = eye.unusual?.(draft, field)
      if (unusual !== undefined) return Math.min(field.maximum, Math.max(field.minimum, unusual))
      // Where nothing may be found, nothing is: dead fish, ammonia, larvae of a second night.
      if (field.usual === null && field.minimum === 0 && field.likelyMinimum === 0) return 0
      const from = Math.max(field.minimum, field.usual === null ? field.likelyMinimum : field.usual * 0.9)
      const to = Math.min(field.maximum, field.usual === null ? field.likelyMaximum : field.usual * 1.1)
      return Number(between(random, from, Math.max(from, to)).toFixed(3))
    }
    case 'count': {
      const density = Math.min(eye.densityPerMl(draft, field), 1000)
      const animals = Array.from({ length: field.replicates }, () =>
        Math.max(0, Math.round(density * field.volumeMl * (1 + 0.1 * random.normal()))),
      )
      return { animals, volumeMl: field.volumeMl, ...(field.withEggs ? { eggs: 30, females: 60 } : {}) }
    }
    case 'choice':
      return pick(random, field.choices).value
    case 'choices':
      return random.uniform() < 0.05 ? [pick(random, field.choices).value] : undefined
    case 'yes_no':
      return random.uniform() < 0.3
    case 'text':
      return random.uniform() < 0.1 ? 'seen' : undefined
    case 'parts':
      return undefined
  }
}

/** Signs a task off as the room would: what was typed is checked, and what it means is written into the snapshot. */
export function liveTask(
  room: SnapshotBuilder,
  { rule, draft, values, at }: { rule: Rule; draft: TaskDraft; values: Record<string, unknown>; at: string },
): void {
  const confirmed = draft.content.fields.map(({ name }) => name)
  const checked = checkValues({ fields: draft.content.fields, values, confirmed })
  expect(checked.problems, `${draft.key} ${JSON.stringify(values)}`).toEqual([])
  const outcome = signOff(rule, draft, checked.values, at)
  const taskId = room.nextId()
  for (const fact of outcome.facts) room.append(fact, { at, taskId })
  for (const creation of outcome.creations ?? []) create(room, creation, at)
}

function create(room: SnapshotBuilder, creation: Creation, at: string): void {
  switch (creation.kind) {
    case 'clutch': {
      const pair = room.snapshot.pairs.find(({ id }) => id === creation.pairId)
      if (pair)
        room.clutch(pair, {
          spawnedAt: creation.spawnedAt,
          intent: creation.intent ?? 'undecided',
          ...(creation.eggs ? { eggs: creation.eggs } : {}),
        })
      return
    }
    case 'larval_batch': {
      const { tank, cultureIds, species, clutchIds, hatchedOn, larvae } = creation
      const tankId = 'id' in tank ? tank.id : room.tank({ name: `New ${room.snapshot.tanks.length}`, ...tank }).id
      const number = larvae === undefined ? {} : { larvae }
      const batch = room.batch({ species, clutchIds, hatchedOn, tankId, ...number })
      for (const clutchId of creation.clutchIds)
        room.fact('hatch', clutchId, at, { hatchedOn: creation.hatchedOn, batchId: batch.id })
      for (const culture of room.snapshot.cultures) if (cultureIds.includes(culture.id)) room.feedLink(batch, culture)
      return
    }
    case 'culture': {
      const { kind: _kind, drawnL, startDensityPerMl, ...vessel } = creation
      const culture = room.culture({ ...vessel, startedAt: at })
      room.fact('inoculation', culture.id, at, { densityPerMl: startDensityPerMl })
      const parts = [{ to: 'culture' as const, subjectId: culture.id, volumeL: drawnL }]
      if (vessel.parentCultureId && drawnL > 0)
        room.fact('harvest', vessel.parentCultureId, at, { volumeL: drawnL, parts })
      return
    }
    case 'juvenile_group': {
      const { kind: _kind, number, ...given } = creation
      const group = room.group(given)
      room.fact('transfer', creation.fromBatchId, at, { number, toSubjectId: group.id })
    }
  }
}
