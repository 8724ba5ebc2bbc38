import type { Id, Rule } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { listRulesInRoom } from './rule-view.ts'

export async function listRules({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Rule[]> {
  return readInRoom({ ctx, roomId }, listRulesInRoom)
}
