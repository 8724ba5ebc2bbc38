import { X509Certificate } from 'node:crypto'
import type { Broker, ChangeBroker, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { invalid } from '../errors.ts'
import { seal } from '../frame/sealed.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { viewBroker } from './broker-view.ts'

/** What a broker's password is sealed as: of one room, and nothing else. */
export const sealedAs = (roomId: Id): string => `broker ${roomId}`

/** Names the broker, another one, or none. A password stays with its address: another address is told nothing. */
export async function changeBroker({
  ctx,
  roomId,
  secret,
  input: { url, username, password, authority },
}: {
  ctx: Context
  roomId: Id
  secret: string
  input: ChangeBroker
}): Promise<Broker> {
  assertPort(url)
  assertAuthority(authority)
  return writeInRoom(
    { ctx, roomId, permission: 'own', changesDay: false },
    async (work) => {
      const before = await work.tx.broker.findUnique({ where: { roomId } })
      work.audit({ action: 'broker.change', detail: { url, username } })
      if (url === null) {
        await work.tx.brokerPassword.deleteMany({ where: { roomId } })
        await work.tx.broker.deleteMany({ where: { roomId } })
        return
      }
      const isSame = before?.url === url
      await keepPassword(work, isSame ? password : (password ?? null), (text) => seal(secret, sealedAs(roomId), text))
      const fields = { url, username, authority, trouble: null, troubleAt: null, isConnected: false }
      const since = isSame ? {} : { lastConnectedAt: null }
      await work.tx.broker.upsert({
        where: { roomId },
        create: { roomId, ...fields, createdAt: ctx.now },
        update: { ...fields, ...since },
      })
    },
    viewBroker,
  )
}

/** @param password undefined: it stays as it is. */
async function keepPassword(
  { tx, roomId }: Work,
  password: string | null | undefined,
  sealed: (text: string) => string,
): Promise<void> {
  if (password === undefined) return
  await tx.brokerPassword.deleteMany({ where: { roomId } })
  if (password !== null) await tx.brokerPassword.create({ data: { roomId, sealed: sealed(password) } })
}

function assertPort(url: string | null): void {
  if (url !== null && !URL.canParse(url)) throw invalid('url', 'Give a port from 1 to 65535, or none.', url)
}

function assertAuthority(authority: string | null): void {
  if (authority === null) return
  try {
    new X509Certificate(authority)
  } catch {
    throw invalid('authority', 'This is no certificate: copy all of it, from its BEGIN line to its END line.')
  }
}
