import { PassThrough } from 'node:stream'
import { type Database, writeBackup } from '@fryward/store'
import type { FastifyBaseLogger } from 'fastify'
import type { Download } from './download.ts'

export type BackupMaker = { write: (now: string) => Download }

type Backups = { database: Database; photosFolder: string | undefined; log: FastifyBaseLogger }

/** Backups as downloads. One is written as it is read, so nothing of it is left on the server's disk. */
export const backupsOf = ({ database, photosFolder, log }: Backups): BackupMaker => ({
  write: (now) => {
    const bytes = new PassThrough()
    writeBackup({ connectionString: database.connectionString, photosFolder, output: bytes, now }).catch(
      (error: unknown) => {
        // The headers are gone: breaking the stream is what tells the browser that the file is not whole.
        log.error({ err: error }, 'the backup broke off')
        bytes.destroy(error instanceof Error ? error : new Error(String(error)))
      },
    )
    const name = `fryward-${now.slice(0, 19).replaceAll(':', '-')}.tar.gz`
    return {
      bytes,
      headers: { 'content-disposition': `attachment; filename="${name}"`, 'cache-control': 'no-store' },
    }
  },
})
