import type { Fact, Id, NewFact } from '@fryward/shared'
import { actorName, type Context } from '../context.ts'
import { notFound } from '../errors.ts'
import { findCard } from '../frame/directory.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { toFact } from './fact-view.ts'
import { insertFact, type KeptFact } from './insert-fact.ts'

/** Records a fact without a task, and works the lists out again. */
export async function recordFact({ ctx, roomId, input }: { ctx: Context; roomId: Id; input: NewFact }): Promise<Fact> {
  return writeInRoom(
    { ctx, roomId, permission: 'record' },
    async (work) => {
      const kept = await insertFact(work, { fact: input, at: input.at ?? ctx.now })
      work.audit({
        action: 'fact.record',
        subjectId: input.subjectId,
        detail: { factId: kept.id, kind: input.kind },
        why: `a ${input.kind.replaceAll('_', ' ')} was recorded`,
      })
      return kept
    },
    asKept,
  )
}

/** As it was just written, which needs no reading: this is waited for under the room's lock. */
async function asKept(work: Work, kept: KeptFact): Promise<Fact> {
  const subject = await findCard(work, kept.subjectId)
  if (!subject) throw notFound('subject')
  const names = new Map(kept.recordedBy === null ? [] : [[kept.recordedBy, actorName(work.ctx.actor)]])
  const dates = { at: new Date(kept.at), receivedAt: new Date(kept.receivedAt) }
  return toFact({ ...kept, ...dates, ...neverStruck, subject, signOff: null }, names)
}

const neverStruck = { struckAt: null, struckBy: null, struckReason: null }
