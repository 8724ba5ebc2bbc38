import { request as requestPlain } from 'node:http'
import { request as requestTls } from 'node:https'
import { Webhook } from 'standardwebhooks'
import { isBeforeSending, messageOf, type Outcome, outcomeOfStatus, patienceMs } from '../outcome.ts'
import { reachableBy } from '../reachable.ts'
import { webhookSecretOf } from './webhook-secret.ts'

const guard = reachableBy('LOCAL_WEBHOOKS')

type Posted = { url: string; webhookId: string; messageId: string; body: string; at: Date }

/**
 * Posts signed messages as Standard Webhooks has them: `webhook-id` stays the same for the same message, so that whoever
 * receives one twice can tell. A redirection is not followed: what is signed goes where its owner said.
 */
export function createWebhookSender({
  secret,
  mayReachThisMachine = false,
}: {
  secret: string
  mayReachThisMachine?: boolean
}): (posted: Posted) => Promise<Outcome> {
  return async ({ url, webhookId, messageId, body, at }) => {
    const to = new URL(url)
    const signature = new Webhook(webhookSecretOf(secret, webhookId)).sign(messageId, at, body)
    try {
      if (!mayReachThisMachine) guard.assertElsewhere(to.hostname)
      const headers = {
        'content-type': 'application/json',
        'content-length': String(Buffer.byteLength(body)),
        'webhook-id': messageId,
        'webhook-timestamp': String(Math.floor(at.getTime() / 1000)),
        'webhook-signature': signature,
      }
      const { status, said } = await post({ to, headers, body, isGuarded: !mayReachThisMachine })
      return outcomeOfStatus(status, said)
    } catch (error) {
      if (isBeforeSending(error)) return { state: 'failed', detail: messageOf(error), isFinal: false }
      return { state: 'unknown', detail: messageOf(error) }
    }
  }
}

type Request = { to: URL; headers: Record<string, string>; body: string; isGuarded: boolean }

// `fetch` takes no look-up of ours, and with it a name could lead to this machine.
function post({ to, headers, body, isGuarded }: Request): Promise<{ status: number; said: string }> {
  const request = to.protocol === 'https:' ? requestTls : requestPlain
  return new Promise((resolve, reject) => {
    const sending = request(
      to,
      {
        ...{ method: 'POST', headers, agent: false, signal: AbortSignal.timeout(patienceMs) },
        ...(isGuarded ? { lookup: guard.lookUp } : {}),
      },
      (answer) => {
        // The status says all; of a long page no more is read.
        answer.resume()
        resolve({ status: answer.statusCode ?? 0, said: answer.statusMessage ?? '' })
      },
    )
    sending.on('error', reject)
    sending.end(body)
  })
}
