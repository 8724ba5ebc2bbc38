import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'

/** The one-time code in the data folder, readable by its owner only: the database knows no more than its hash. */
export function keptClaimCode(dataDir: string) {
  const path = join(dataDir, 'secrets', 'claim-code')
  return {
    read: (): string | null => (existsSync(path) ? readFileSync(path, 'utf8').trim() : null),
    /** Null, once the server is claimed, takes the file away. */
    write: (code: string | null): void => {
      if (code === null) {
        rmSync(path, { force: true })
        return
      }
      mkdirSync(dirname(path), { recursive: true, mode: 0o700 })
      writeFileSync(path, `${code}\n`, { mode: 0o600 })
    },
  }
}
