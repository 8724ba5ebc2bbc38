import { Agent } from 'node:https'
import webPush from 'web-push'
import { isBeforeSending, messageOf, type Outcome, outcomeOfStatus, patienceMs } from '../outcome.ts'
import { reachableBy } from '../reachable.ts'
import { vapidKeysOf } from './vapid-keys.ts'

/** Where a browser said that it may be reached (Push API, W3C: PushSubscription). */
export type PushAddress = { endpoint: string; p256dh: string; auth: string }

type Pushed = {
  address: PushAddress
  /** JSON that the service worker reads; encrypted for this browser alone (RFC 8291). */
  payload: string
  /** A later message of the same topic takes the place of one that was not delivered yet; up to 32 letters of base64url. */
  topic: string
  /** How long the push service keeps it for a phone that is off. */
  keepS: number
}

const guard = reachableBy('LOCAL_WEBHOOKS')

/**
 * Hands messages to push services.
 * @param contact who is told of trouble with this server's pushes: an https address or a mailto (RFC 8292, section 2.1).
 * @param trust certificate authority of the push service, where it is not a public one.
 */
export function createPushSender({
  secret,
  contact,
  trust,
  mayReachThisMachine = false,
}: {
  secret: string
  contact: string
  trust?: string
  mayReachThisMachine?: boolean
}): (pushed: Pushed) => Promise<Outcome> {
  const vapidDetails = { subject: contact, ...vapidKeysOf(secret) }
  const agent = new Agent({
    ...(trust === undefined ? {} : { ca: trust }),
    ...(mayReachThisMachine ? {} : { lookup: guard.lookUp }),
  })
  return async ({ address: { endpoint, p256dh, auth }, payload, topic, keepS }) => {
    try {
      if (!mayReachThisMachine) guard.assertElsewhere(new URL(endpoint).hostname)
      const answer = await webPush.sendNotification({ endpoint, keys: { p256dh, auth } }, payload, {
        ...{ vapidDetails, agent, topic, TTL: keepS, urgency: 'high', timeout: patienceMs },
      })
      return outcomeOfStatus(answer.statusCode, 'taken by the push service')
    } catch (error) {
      if (error instanceof webPush.WebPushError) return outcomeOfStatus(error.statusCode, error.body || error.message)
      if (isBeforeSending(error)) return { state: 'failed', detail: messageOf(error), isFinal: false }
      return { state: 'unknown', detail: messageOf(error) }
    }
  }
}
