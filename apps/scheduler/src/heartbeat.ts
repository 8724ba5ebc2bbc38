import type { TickLog } from './tick-log.ts'

const patienceMs = 10_000

/**
 * Tells an address outside that this server is awake; whoever listens there notices when that stops.
 * @returns whether it was taken.
 */
export async function beat(url: string, log: TickLog): Promise<boolean> {
  try {
    const { ok, status } = await fetch(url, { method: 'POST', signal: AbortSignal.timeout(patienceMs) })
    if (!ok) log.warn({ status }, 'the heartbeat was not taken; somebody outside may think that this server is off')
    return ok
  } catch (error) {
    log.warn({ err: error }, 'the heartbeat did not arrive; somebody outside may think that this server is off')
    return false
  }
}
