import pg from 'pg'

// With JITTER=1 each statement is sent a little late, now and then much too late, so that what runs side by side ends in
// another order every time. What then fails took an order for granted. A connection's own statements keep theirs.

type Queue = { _pulseQueryQueue: () => void; _queryQueue: unknown[]; isHeldBack?: boolean }

const isWanted = process.env.JITTER === '1'
// Of the library's insides: where it sends the next statement of a connection that is free.
const client = pg.Client.prototype as unknown as Queue & { isJittery?: boolean }
if (isWanted && typeof client._pulseQueryQueue !== 'function')
  throw new Error('pg sends its statements another way now')

if (isWanted && !client.isJittery) {
  const send = client._pulseQueryQueue
  const { setTimeout } = globalThis
  client.isJittery = true
  client._pulseQueryQueue = function (this: Queue) {
    if (this.isHeldBack) return
    if (this._queryQueue.length === 0) return send.call(this)
    this.isHeldBack = true
    setTimeout(() => {
      this.isHeldBack = false
      send.call(this)
    }, delayMs())
  }
}

function delayMs(): number {
  const chance = Math.random()
  if (chance < 0.4) return 0
  return chance < 0.98 ? Math.random() * 30 : 200
}
