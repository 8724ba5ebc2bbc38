import type { Id, RoomWebhook } from '@fryward/shared'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { writeInRoom } from '../frame/write-in-room.ts'

/** The secret of a webhook by its id. */
export type SecretOf = (webhookId: Id) => string

export async function getWebhook({
  ctx,
  roomId,
  secretOf,
}: {
  ctx: Context
  roomId: Id
  secretOf: SecretOf
}): Promise<RoomWebhook> {
  return readInRoom({ ctx, roomId, permission: 'own' }, async ({ tx }) =>
    toWebhook(await tx.webhook.findUnique({ where: { roomId } }), secretOf),
  )
}

/** Another address is another webhook, with a secret of its own. */
export async function changeWebhook({
  ctx,
  roomId,
  secretOf,
  input: { url },
}: {
  ctx: Context
  roomId: Id
  secretOf: SecretOf
  input: { url: string | null }
}): Promise<RoomWebhook> {
  // The answer that is kept for a repeat holds no secret: it is made of the webhook's id each time.
  const kept = await writeInRoom({ ctx, roomId, permission: 'own', changesDay: false }, async (work) => {
    const before = await work.tx.webhook.findUnique({ where: { roomId } })
    work.audit({ action: 'webhook.change', detail: { host: url === null ? null : new URL(url).host } })
    if (url !== null && before?.url === url) return { id: before.id, url }
    await work.tx.webhook.deleteMany({ where: { roomId } })
    if (url === null) return null
    const { id } = await work.tx.webhook.create({ data: { roomId, id: uuidv7(), url, createdAt: ctx.now } })
    return { id, url }
  })
  return toWebhook(kept, secretOf)
}

const toWebhook = (webhook: { id: Id; url: string } | null, secretOf: SecretOf): RoomWebhook =>
  webhook ? { url: webhook.url, secret: secretOf(webhook.id) } : { url: null, secret: null }
