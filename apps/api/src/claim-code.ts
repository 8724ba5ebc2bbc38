import { setTimeout as delay } from 'node:timers/promises'
import { prepareClaim } from '@fryward/room'
import type { Database } from '@fryward/store'
import type { FastifyBaseLogger } from 'fastify'
import { keptClaimCode } from './claim-code-file.ts'
import { isDatabaseAway } from './database-away.ts'

type Asked = { database: Database; dataDir: string | undefined; log: FastifyBaseLogger }

const askAgainMs = 1000

/**
 * The code that claims this server, kept where a restart finds it; null once there is an owner. A database that is away is
 * waited for, so that requests are told so meanwhile: an API that ended instead would refuse connections until it is
 * started again.
 */
export async function readyClaimCode({ database, dataDir, log }: Asked): Promise<string | null> {
  const file = dataDir ? keptClaimCode(dataDir) : null
  for (;;) {
    try {
      const now = new Date().toISOString()
      const ctx = { database, actor: { kind: 'system' as const, job: 'claim' }, now }
      const code = await prepareClaim({ ctx, kept: file?.read() ?? null })
      file?.write(code)
      return code
    } catch (error) {
      if (!isDatabaseAway(error)) throw error
      log.warn({ err: error }, 'the database is away; this server is ready once it is back')
      await delay(askAgainMs)
    }
  }
}
