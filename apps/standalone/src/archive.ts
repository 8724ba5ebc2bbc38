import { createWriteStream, existsSync } from 'node:fs'
import { rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { restoreBackup, writeBackup } from '@fryward/store'
import { prepareDataFolder } from './data-folder.ts'
import { openInstallationDatabase, stopUnlessAdopted } from './database.ts'
import { lockDataFolder } from './instance-lock.ts'
import type { Settings } from './settings.ts'
import { StartProblem } from './start-problem.ts'

/** Writes one file, while Fryward runs or not. */
export async function backup(settings: Settings, file: string): Promise<void> {
  if (existsSync(file)) throw new StartProblem(`${file} exists already; name another file.`)
  prepareDataFolder(settings.DATA_DIR)
  const database = await openInstallationDatabase(settings)
  const beside = `${file}.part`
  try {
    const manifest = await writeBackup({
      connectionString: database.connectionString,
      photosFolder: photosIn(settings),
      output: createWriteStream(beside, { mode: 0o600 }),
      now: new Date().toISOString(),
    })
    await rename(beside, file)
    const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0)
    console.log(
      `Wrote ${file}: ${rows} rows of ${manifest.tables.length} tables, ${manifest.photos.length} photo files. It holds accounts: keep it as safe as the server.`,
    )
  } finally {
    await rm(beside, { force: true })
    await stopUnlessAdopted(database)
  }
}

/** Fills an empty installation. */
export async function restore(settings: Settings, file: string): Promise<void> {
  if (!existsSync(file)) throw new StartProblem(`There is no file ${file}.`)
  prepareDataFolder(settings.DATA_DIR)
  // Nothing may run on the folder while it is filled.
  const lock = lockDataFolder(settings.DATA_DIR)
  try {
    const database = await openInstallationDatabase(settings)
    try {
      const manifest = await restoreBackup({
        connectionString: database.connectionString,
        file,
        photosFolder: photosIn(settings),
        log: (sentence) => console.log(sentence),
      })
      console.log(`Restored the backup of ${manifest.createdAt}. Start it with: npm start`)
    } finally {
      await stopUnlessAdopted(database)
    }
  } finally {
    lock.release()
  }
}

const photosIn = ({ DATA_DIR }: Settings): string => join(DATA_DIR, 'photos')
