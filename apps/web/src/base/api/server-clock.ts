/** How far the server's clock is ahead of this device's, by the newest answer. */
let aheadMs = 0

/** A Date header counts whole seconds and has travelled: less than this is no difference between two clocks. */
const noiseMs = 2_000
/** Half of the second that the header rounds down. */
const roundedMs = 500

/** Sets the clock by an answer's Date header; an answer without one leaves it as it is. */
export function hearServerClock(response: Response): void {
  const saidMs = Date.parse(response.headers.get('date') ?? '')
  if (Number.isNaN(saidMs)) return
  const heardMs = saidMs + roundedMs - Date.now()
  if (Math.abs(heardMs - aheadMs) > noiseMs) aheadMs = Math.abs(heardMs) > noiseMs ? heardMs : 0
}

/** Now, by the server's clock as far as it is known; a phone's own clock may be wrong by hours. */
export const serverNow = (): Date => new Date(Date.now() + aheadMs)
