import type { ChangeRule, Id, Rule } from '@fryward/shared'
import type { Prisma } from '@fryward/store'
import type { Context } from '../context.ts'
import { personOf } from '../frame/person-of.ts'
import { assertFresh } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { acceptedParameters } from './accepted-parameters.ts'
import { findRule } from './find-rule.ts'
import { listRulesInRoom } from './rule-view.ts'

/** Switches a rule or sets its parameters for this room: a dated change that says who, never an edit. */
export async function changeRule({
  ctx,
  roomId,
  ruleId,
  input,
}: {
  ctx: Context
  roomId: Id
  ruleId: string
  input: ChangeRule
}): Promise<Rule> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const rule = findRule(ruleId)
      const current = (await listRulesInRoom(work)).find((each) => each.id === ruleId)!
      assertFresh(current, input.version, `The rule "${rule.title}"`)
      const parameters = acceptedParameters(rule, input.parameters)
      await work.tx.ruleChange.create({
        data: {
          roomId,
          ruleId,
          version: current.version + 1,
          isOn: input.isOn,
          parameters: parameters as Prisma.InputJsonObject,
          changedBy: personOf(ctx.actor),
          changedAt: ctx.now,
        },
      })
      work.audit({
        action: 'rule.change',
        detail: { ruleId, isOn: input.isOn, parameters },
        why: `the rule "${rule.title}" was changed`,
      })
    },
    async (work) => (await listRulesInRoom(work)).find((each) => each.id === ruleId)!,
  )
}
