import type { NewPhone } from '@fryward/shared'
import { sayDevice } from '@fryward/words'

/** Why this browser cannot be pushed to; null where it can. */
export function whyNoPush(): string | null {
  if (!window.isSecureContext) return 'Pushes need HTTPS: open this page by its https address.'
  if (!('serviceWorker' in navigator) || !('PushManager' in window))
    return 'This browser takes no pushes. On an iPhone or iPad, add Fryward to the home screen first and open it there.'
  return null
}

/**
 * Asks the person, then the browser, for where this browser may be pushed to.
 * @throws Error with a sentence where either says no.
 */
export async function letPush(pushKey: string): Promise<NewPhone> {
  if ((await Notification.requestPermission()) !== 'granted')
    throw new Error('This browser was told to show no messages of Fryward. Allow them in its settings, then try again.')
  await navigator.serviceWorker.register('/push-worker.js')
  const { pushManager } = await navigator.serviceWorker.ready
  const subscription = await subscribeTo(pushManager, pushKey)
  const { endpoint, keys } = subscription.toJSON()
  return {
    name: sayDevice(navigator.userAgent),
    endpoint: endpoint ?? '',
    p256dh: keys?.p256dh ?? '',
    auth: keys?.auth ?? '',
  }
}

/** A browser has one address, and every room that pushes to it does so there: it is made again for another key alone. */
async function subscribeTo(pushManager: PushManager, pushKey: string): Promise<PushSubscription> {
  const wanted = { userVisibleOnly: true, applicationServerKey: pushKey }
  try {
    return await pushManager.subscribe(wanted)
  } catch (problem) {
    // Push API, PushManager.subscribe: one that was made under another key refuses this.
    if (!(problem instanceof DOMException) || problem.name !== 'InvalidStateError') throw problem
    await (await pushManager.getSubscription())?.unsubscribe()
    return pushManager.subscribe(wanted)
  }
}
