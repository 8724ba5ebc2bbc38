import { PassThrough } from 'node:stream'
import { assertOwnsServer } from '@fryward/room'
import { backupPath } from '@fryward/shared'
import { type Database, writeBackup } from '@fryward/store'
import type { FastifyInstance } from 'fastify'

/** The backup as a download. It is written as it is read, so nothing of it is left on the server's disk. */
export async function registerBackup(
  app: FastifyInstance,
  { database, photosFolder }: { database: Database; photosFolder: string | undefined },
): Promise<void> {
  app.get(
    `/api/v1${backupPath}`,
    { schema: { hide: true }, config: { rateLimit: { max: 6, timeWindow: '1 minute' } } },
    async (request, reply) => {
      const ctx = app.contextFor(await app.personOf(request))
      await assertOwnsServer({ ctx })
      const output = new PassThrough()
      writeBackup({ connectionString: database.connectionString, photosFolder, output, now: ctx.now }).catch(
        (error: unknown) => {
          // The headers are gone: breaking the stream is what tells the browser that the file is not whole.
          request.log.error({ err: error }, 'the backup broke off')
          output.destroy(error instanceof Error ? error : new Error(String(error)))
        },
      )
      const name = `fryward-${ctx.now.slice(0, 19).replaceAll(':', '-')}.tar.gz`
      return reply.header('content-disposition', `attachment; filename="${name}"`).type('application/gzip').send(output)
    },
  )
}
