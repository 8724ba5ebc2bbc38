import { createECDH, randomBytes, randomUUID } from 'node:crypto'
import type { NewPhone } from '@fryward/shared'
import { minutesFrom } from '../full-room.ts'
import { type RawRequest, send } from '../send.ts'
import { inRoom, type Requests, type Writing } from './writing.ts'

/** What a browser gives a page that asks to be pushed to. */
function browserKeys(): NewPhone {
  const pair = createECDH('prime256v1')
  const p256dh = pair.generateKeys().toString('base64url')
  const endpoint = `https://push.example.org/send/${randomUUID()}`
  return { name: 'Phone', endpoint, p256dh, auth: randomBytes(16).toString('base64url') }
}

/** A phone of whoever asks. */
async function phoneOf({ world, full, as }: Writing): Promise<string> {
  await send(world, as, 'addPhone', { params: { roomId: full.roomId }, body: browserKeys() })
  const where = { roomId: full.roomId, userId: as.userId }
  const phone = await world.database.prisma.pushPhone.findFirst({ where, orderBy: { id: 'desc' } })
  return phone?.id ?? randomUUID()
}

const trial = (writing: Writing): RawRequest => ({
  ...{ params: inRoom(writing), body: {}, remoteAddress: `10.8.0.${(writing.serial % 250) + 1}` },
})

export const messageRequests = {
  listMessages: async (writing) => {
    await phoneOf(writing)
    await send(writing.world, writing.as, 'sendTrial', trial(writing))
    return { params: inRoom(writing) }
  },
  listAbsences: async (writing) => {
    const { world } = writing
    await world.database.prisma.absence.createMany({
      data: [{ fromAt: minutesFrom(world, -90), toAt: minutesFrom(world, -60) }],
      skipDuplicates: true,
    })
    return { params: inRoom(writing) }
  },
  getReach: async (writing) => {
    await phoneOf(writing)
    return { params: inRoom(writing) }
  },
  changeReach: (writing) => ({ params: inRoom(writing), body: { alarmsByMail: writing.serial % 2 === 0 } }),
  addPhone: (writing) => ({ params: inRoom(writing), body: browserKeys() }),
  removePhone: async (writing) => ({ params: inRoom(writing, { phoneId: await phoneOf(writing) }) }),
  sendTrial: async (writing) => {
    await phoneOf(writing)
    return trial(writing)
  },
  getWebhook: (writing) => ({ params: inRoom(writing) }),
  changeWebhook: (writing) => ({
    params: inRoom(writing),
    body: { url: `https://hub.example.org/${writing.serial}` },
  }),
} satisfies Requests
