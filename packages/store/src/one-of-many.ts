import pg from 'pg'

export type OneOfMany = { close: () => Promise<void> }

type Asked = {
  connectionString: string
  /** What there is to be the one for; the same number in every process. */
  key: number
  /** How often it is tried, and how often whoever is the one makes sure that they still are. */
  everyMs: number
  onHeld: () => void
  onLost: () => void
  onError: (error: unknown) => void
}

/**
 * Of any number of processes one at a time holds a lock of PostgreSQL, for as long as its connection lasts; the others go
 * on trying. A connection that no longer answers is given up, so that no process believes what is no longer so for long.
 */
export function beOneOfMany({ connectionString, key, everyMs, onHeld, onLost, onError }: Asked): OneOfMany {
  let client: pg.Client | undefined
  let isHeld = false
  let isClosed = false
  let timer: NodeJS.Timeout | undefined

  const lose = (which: pg.Client, error?: unknown) => {
    if (which !== client) return
    client = undefined
    which.end().catch(() => undefined)
    if (isHeld) onLost()
    isHeld = false
    if (isClosed) return
    if (error !== undefined) onError(error)
    timer = setTimeout(() => void connect(), everyMs)
  }
  const look = async (which: pg.Client) => {
    if (isHeld) await which.query('SELECT 1')
    else {
      const { rows } = await which.query('SELECT pg_try_advisory_lock($1) AS held', [key])
      if (which !== client || !rows[0]?.held) return
      isHeld = true
      onHeld()
    }
  }
  const lookAndAgain = async (which: pg.Client) => {
    await look(which)
    if (which === client) timer = setTimeout(() => void lookAndAgain(which).catch((e) => lose(which, e)), everyMs)
  }
  const connect = async () => {
    const next = new pg.Client({ connectionString, query_timeout: 2 * everyMs, connectionTimeoutMillis: 2 * everyMs })
    client = next
    next.on('error', (error) => lose(next, error))
    next.on('end', () => lose(next, new Error('The connection that holds the lock ended.')))
    try {
      await next.connect()
      await lookAndAgain(next)
    } catch (error) {
      lose(next, error)
    }
  }
  void connect()
  return {
    close: async () => {
      isClosed = true
      clearTimeout(timer)
      const last = client
      client = undefined
      if (isHeld) onLost()
      isHeld = false
      await last?.end().catch(() => undefined)
    },
  }
}
