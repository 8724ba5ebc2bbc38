import type { Broker, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { viewBroker } from './broker-view.ts'

export const getBroker = ({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Broker> =>
  readInRoom({ ctx, roomId }, viewBroker)
