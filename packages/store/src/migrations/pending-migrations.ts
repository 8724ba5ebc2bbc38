import type { MigrationFile } from './migration-files.ts'

/** A row of `_prisma_migrations`, as far as it decides anything. */
export type AppliedMigration = { name: string; checksum: string; isFinished: boolean }

export class MigrationRefused extends Error {
  override readonly name = 'MigrationRefused'
}

/** The files still to be applied, in order. Throws MigrationRefused where the database and the files disagree. */
export function derivePending(files: MigrationFile[], applied: AppliedMigration[]): MigrationFile[] {
  const fileByName = new Map(files.map((file) => [file.name, file]))
  for (const row of applied) {
    const file = fileByName.get(row.name)
    if (file === undefined) {
      throw new MigrationRefused(
        `The database has the migration ${row.name}, which this version of Fryward does not know; start the newer version that made it.`,
      )
    }
    if (!row.isFinished) {
      throw new MigrationRefused(
        `The migration ${row.name} was begun by another tool and never finished; resolve it with that tool, then start again.`,
      )
    }
    if (file.checksum !== row.checksum) {
      throw new MigrationRefused(
        `The migration ${row.name} was changed after it was applied (checksum ${file.checksum} on disk, ${row.checksum} in the database); restore the file and add a new migration instead.`,
      )
    }
  }
  const appliedNames = new Set(applied.map((row) => row.name))
  return files.filter((file) => !appliedNames.has(file.name))
}
