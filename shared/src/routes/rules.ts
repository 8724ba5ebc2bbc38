import * as z from 'zod/mini'
import { ChangeRuleSchema, RuleIdSchema, RulePreviewSchema, RuleSchema } from '../rule.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, write } = routesTagged('rules')

export const ruleRoutes = {
  listRules: get('/rooms/:roomId/rules', {
    summary: 'The rules with their parameters and sources',
    permission: 'read',
    params: inRoom,
    response: z.array(RuleSchema),
  }),
  previewRule: write('POST', '/rooms/:roomId/rules/:ruleId/preview', {
    summary: "What a change would make of tomorrow's list; nothing is saved",
    permission: 'manage',
    params: { ...inRoom, ruleId: RuleIdSchema },
    body: ChangeRuleSchema,
    response: RulePreviewSchema,
    status: 200,
  }),
  changeRule: write('PUT', '/rooms/:roomId/rules/:ruleId', {
    summary: 'Switch a rule or change its parameters',
    permission: 'manage',
    params: { ...inRoom, ruleId: RuleIdSchema },
    body: ChangeRuleSchema,
    response: RuleSchema,
  }),
}
