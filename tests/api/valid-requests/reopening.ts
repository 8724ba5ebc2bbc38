import { z } from 'zod'
import { send } from '../send.ts'
import { deviceRequests } from './devices.ts'
import { factRequests } from './facts.ts'
import { tankRequests } from './tanks.ts'
import { inRoom, type Requests, type Write, type Writing } from './writing.ts'

const EndedSchema = z.object({ id: z.string(), version: z.number() })

/** Something that the owner has just ended by this request. */
async function ended(writing: Writing, id: 'endTank' | 'endGauge' | 'revokeDevice' | 'strikeFact', write: Write) {
  const { world, full } = writing
  const { json, text } = await send(world, full.owner, id, await write(writing))
  const parsed = EndedSchema.safeParse(json)
  if (parsed.success) return parsed.data
  // A record has no version.
  const bare = z.object({ id: z.string() }).safeParse(json)
  if (!bare.success) throw new Error(`${id} was refused: ${text}`)
  return { ...bare.data, version: 1 }
}

export const reopeningRequests = {
  reopenThing: async (writing) => {
    const { id, version } = await ended(writing, 'endTank', tankRequests.endTank)
    return { params: inRoom(writing, { subjectId: id }), body: { version } }
  },
  restoreFact: async (writing) => {
    const { id } = await ended(writing, 'strikeFact', factRequests.strikeFact)
    return { params: inRoom(writing, { factId: id }), body: {} }
  },
  restoreGauge: async (writing) => {
    const { id } = await ended(writing, 'endGauge', deviceRequests.endGauge)
    return { params: inRoom(writing, { gaugeId: id }), body: {} }
  },
  restoreDevice: async (writing) => {
    const { id } = await ended(writing, 'revokeDevice', deviceRequests.revokeDevice)
    return { params: inRoom(writing, { deviceId: id }), body: {} }
  },
} satisfies Requests
