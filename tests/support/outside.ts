import { createECDH, randomBytes } from 'node:crypto'
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { createServer, type IncomingMessage, type Server } from 'node:http'
import { createServer as createTlsServer } from 'node:https'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { buffer, text } from 'node:stream/consumers'
import { ensureLocalCertificate } from '@fryward/standalone'
import { SMTPServer } from 'smtp-server'
import { openPush } from './open-push.mjs'

type Listens = { listen: (port: number, host: string, then: () => void) => unknown }

const listening = async (server: Listens, at: () => AddressInfo | string | null) => {
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', () => resolve()))
  return (at() as AddressInfo).port
}

export type Letter = { to: string[]; text: string }
/** `take` accepts, `refuse` says no, `hang` takes the letter and never answers, `drop` cuts the line on it. */
export type MailMood = 'take' | 'refuse' | 'hang' | 'drop'

/** A mail server on this machine, whose mood a test sets. */
export async function openMailServer() {
  const letters: Letter[] = []
  const state: { mood: MailMood } = { mood: 'take' }
  const server = new SMTPServer({
    ...{ authOptional: true, disabledCommands: ['STARTTLS'], disableReverseLookup: true, closeTimeout: 100 },
    onRcptTo: ({ address }, _session, done) =>
      done(state.mood === 'refuse' ? Object.assign(new Error(`no such box: ${address}`), { responseCode: 550 }) : null),
    onData: (stream, session, done) => {
      void text(stream).then((received) => {
        letters.push({ to: session.envelope.rcptTo.map(({ address }) => address), text: unfold(received) })
        if (state.mood === 'drop') for (const connection of server.connections) connection.close()
        if (state.mood === 'take') done()
      })
    },
  })
  const port = await listening(server, () => server.server.address())
  return {
    letters,
    state,
    url: `smtp://127.0.0.1:${port}`,
    close: () => new Promise<void>((resolve) => server.close(resolve)),
  }
}

/** Quoted-printable (RFC 2045, section 6.7) back to what was written. */
const unfold = (mail: string): string =>
  Buffer.from(
    mail
      .replaceAll(/=\r?\n/g, '')
      .replaceAll(/=([0-9A-F]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16))),
    'latin1',
  ).toString()

export type Posted = { headers: IncomingMessage['headers']; body: string }

/** Somebody who takes webhooks. */
export async function openWebhookServer() {
  const posted: Posted[] = []
  const state = { status: 204 }
  const server = createServer(async (request, response) => {
    posted.push({ headers: request.headers, body: await text(request) })
    response.writeHead(state.status).end()
  })
  const port = await listening(server, () => server.address())
  return { posted, state, url: `http://127.0.0.1:${port}/alarms`, close: () => closing(server) }
}

const closing = (server: Server): Promise<void> =>
  new Promise((resolve) => {
    server.close(() => resolve())
    server.closeAllConnections()
  })

/** A push service with one browser behind it. */
export async function openPushService() {
  const folder = await mkdtemp(join(tmpdir(), 'fryward-push-'))
  const files = await ensureLocalCertificate({ dataDir: folder, names: [], addresses: ['127.0.0.1'], now: new Date() })
  const pair = createECDH('prime256v1')
  const browser = { pair, p256dh: pair.generateKeys().toString('base64url'), auth: randomBytes(16) }
  const pushed: { headers: IncomingMessage['headers']; text: string }[] = []
  const state = { status: 201 }
  const [cert, key] = [await readFile(files.certFile), await readFile(files.keyFile)]
  const server = createTlsServer({ cert, key }, async (request, response) => {
    pushed.push({ headers: request.headers, text: openPush(await buffer(request), browser) })
    response.writeHead(state.status).end()
  })
  const port = await listening(server, () => server.address())
  return {
    pushed,
    state,
    trust: await readFile(files.authorityFile, 'utf8'),
    phone: {
      ...{ name: 'Phone by the bed', endpoint: `https://127.0.0.1:${port}/send/1`, p256dh: browser.p256dh },
      auth: browser.auth.toString('base64url'),
    },
    close: async () => {
      await closing(server)
      await rm(folder, { recursive: true, force: true })
    },
  }
}
