import { addDays, draftDay, isSame, localDate, nextSnapshot, rules, type TaskDraft } from '@fryward/husbandry'
import type { ChangeRule, Id, RulePreview } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { acceptedParameters } from './accepted-parameters.ts'
import { findRule } from './find-rule.ts'

/** What a change of a rule would make of tomorrow's list, against what it is without. Nothing is saved. */
export async function previewRule({
  ctx,
  roomId,
  ruleId,
  input,
}: {
  ctx: Context
  roomId: Id
  ruleId: string
  input: ChangeRule
}): Promise<RulePreview> {
  return readInRoom({ ctx, roomId, permission: 'manage' }, async ({ state }) => {
    const parameters = acceptedParameters(findRule(ruleId), input.parameters)
    const { snapshot } = await state()
    const date = addDays(localDate({ timeZone: snapshot.room.timeZone, at: ctx.now }), 1)
    const ruleSettings = { ...snapshot.ruleSettings, [ruleId]: { isOn: input.isOn, parameters } }
    const changed = nextSnapshot(snapshot, { ...snapshot, ruleSettings })
    return compare({
      date,
      before: draftDay({ snapshot, date, rules }).drafts,
      after: draftDay({ snapshot: changed, date, rules }).drafts,
    })
  })
}

function compare({ date, before, after }: { date: string; before: TaskDraft[]; after: TaskDraft[] }): RulePreview {
  const old = new Map(before.map((draft) => [draft.key, draft]))
  const kept = new Set(after.map((draft) => draft.key))
  const line = (draft: TaskDraft) => ({
    title: draft.content.title,
    subjectName: draft.subjectName,
    amount: draft.content.amount,
  })
  const both = after.flatMap((draft) => {
    const was = old.get(draft.key)
    return was ? [{ draft, was }] : []
  })
  const changed = both.filter(({ draft, was }) => !isSame(draft.content.amount, was.content.amount))
  return {
    date,
    added: after.filter((draft) => !old.has(draft.key)).map(line),
    removed: before.filter((draft) => !kept.has(draft.key)).map(line),
    changed: changed.map(({ draft, was }) => ({
      title: draft.content.title,
      subjectName: draft.subjectName,
      from: was.content.amount,
      to: draft.content.amount,
    })),
    unchanged: both.length - changed.length,
  }
}
