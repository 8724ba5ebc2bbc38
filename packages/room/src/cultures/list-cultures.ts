import type { Culture, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { listCulturesInRoom } from './culture-view.ts'

export async function listCultures({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Culture[]> {
  return readInRoom({ ctx, roomId }, listCulturesInRoom)
}
