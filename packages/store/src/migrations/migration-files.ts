import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

export type MigrationFile = { name: string; sql: string; checksum: string }

/** The migrations of a folder in the order of their names, each `<name>/migration.sql`. */
export function readMigrationFiles(folder: string): MigrationFile[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(join(folder, entry.name, 'migration.sql')))
    .map((entry) => entry.name)
    .sort()
    .map((name) => {
      const bytes = readFileSync(join(folder, name, 'migration.sql'))
      return { name, sql: bytes.toString('utf8'), checksum: createHash('sha256').update(bytes).digest('hex') }
    })
}
