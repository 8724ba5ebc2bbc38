import { createHash } from 'node:crypto'
import { createReadStream, createWriteStream, existsSync } from 'node:fs'
import { copyFile, mkdir, mkdtemp, readFile, rm, stat } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { Transform } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createGunzip } from 'node:zlib'
import { from as copyFrom } from 'pg-copy-streams'
import { extract } from 'tar-stream'
import { applyMigrations, migrationsFolder } from '../migrations/index.ts'
import { readMigrationFiles } from '../migrations/migration-files.ts'
import { openClient } from '../open-client.ts'
import { type Manifest, ManifestSchema, manifestName, photoFile, tableFile } from './manifest.ts'
import { listTables, quoted, type Table } from './tables.ts'

export type RestoreBackup = {
  connectionString: string
  file: string
  photosFolder?: string | undefined
  log?: (sentence: string) => void
}

/**
 * Fills an empty database from a backup: every checksum first, then the schema as it was, all rows in one transaction,
 * then the migrations made since. Refuses a database that holds anything, and a backup of a later version.
 */
export async function restoreBackup({
  connectionString,
  file,
  photosFolder,
  log = () => {},
}: RestoreBackup): Promise<Manifest> {
  const scratch = await mkdtemp(join(tmpdir(), 'fryward-restore-'))
  try {
    await unpack(file, scratch)
    const manifest = await readManifest(file, scratch)
    await assertWhole(manifest, scratch)
    assertKnown(manifest)
    await assertEmpty(connectionString)
    await applyMigrations({ connectionString, upTo: manifest.migrations.at(-1)!.name })
    await loadTables({ connectionString, manifest, scratch, log })
    await applyMigrations({ connectionString, log })
    if (photosFolder)
      for (const { path } of manifest.photos)
        await placePhoto({ from: join(scratch, photoFile(path)), to: join(photosFolder, path) })
    return manifest
  } finally {
    await rm(scratch, { recursive: true, force: true })
  }
}

async function unpack(file: string, scratch: string): Promise<void> {
  const tar = extract()
  const isOurs = (name: string) => !name.includes('..') && ourNames.test(name)
  const entries = async () => {
    for await (const entry of tar) {
      const { name } = entry.header
      if (!isOurs(name))
        throw new Refused(`The backup holds "${name}", which no backup of Fryward does. Nothing was restored.`)
      if (name === manifestName && (entry.header.size ?? 0) > mostManifestBytes) throw new Refused(tooLarge)
      const path = join(scratch, name)
      await mkdir(dirname(path), { recursive: true })
      await pipeline(entry, createWriteStream(path))
    }
  }
  try {
    // Whichever of the two ends first with an error, the other's is only its echo.
    const { size } = await stat(file)
    await Promise.all([pipeline(createReadStream(file), createGunzip(), atMost(size), tar), entries()])
  } catch (cause) {
    if (cause instanceof Refused) throw cause
    throw new Error(`${file} cannot be read as a backup; it is damaged, cut short or another kind of file.`, { cause })
  }
}

// Names come from a file that somebody may have altered: only ours, and never a way out of the folder.
const ourNames = /^(manifest\.json|tables\/[a-z_]+\.copy|photos\/[0-9a-f]{2}\/[0-9a-f]{64}\.(full|thumbnail)\.jpg)$/
class Refused extends Error {}

const mebibyte = 1024 ** 2
// A room's rows unpack to nine times their size (measured on a room of four days); DEFLATE can reach 1032 times (RFC 1951),
// and a file made to fill a disk comes near to it.
const mostTimes = 150
const neverTooMuchBytes = 64 * mebibyte
// A line for each photo and table: a hundred thousand photos are twenty mebibytes.
const mostManifestBytes = 64 * mebibyte
const tooLarge =
  'The backup unpacks to far more than a room holds, so it is damaged or was made to fill the disk. Nothing was restored.'

/** Passes on what is unpacked of so large a file, and ends where no backup goes on. */
function atMost(fileBytes: number): Transform {
  const most = Math.max(neverTooMuchBytes, fileBytes * mostTimes)
  let bytes = 0
  return new Transform({
    transform(chunk: Buffer, _encoding, done) {
      bytes += chunk.length
      if (bytes > most) done(new Refused(tooLarge))
      else done(null, chunk)
    },
  })
}

async function readManifest(file: string, scratch: string): Promise<Manifest> {
  const path = join(scratch, manifestName)
  if (!existsSync(path)) throw new Error(`${file} has no manifest; it is cut short or no backup of Fryward.`)
  const parsed = ManifestSchema.safeParse(readJson(await readFile(path, 'utf8')))
  if (!parsed.success)
    throw new Error(
      `${file} is a backup in a form that this version does not know. Restore it with the version that made it.`,
    )
  return parsed.data
}

function readJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    // No JSON is no manifest; what is said of one says it.
    return undefined
  }
}

async function assertWhole(manifest: Manifest, scratch: string): Promise<void> {
  const files = [
    ...manifest.tables.map((table) => ({ ...table, name: tableFile(table.name) })),
    ...manifest.photos.map((photo) => ({ ...photo, name: photoFile(photo.path) })),
  ]
  for (const { name, bytes, sha256 } of files) {
    const path = join(scratch, name)
    const size = existsSync(path) ? (await stat(path)).size : -1
    if (size !== bytes || (await sha256Of(path)) !== sha256)
      throw new Error(`${name} in the backup is damaged or missing. Nothing was restored; use another backup.`)
  }
}

async function sha256Of(path: string): Promise<string> {
  const hash = createHash('sha256')
  await pipeline(createReadStream(path), hash)
  return hash.digest('hex')
}

function assertKnown(manifest: Manifest): void {
  const known = new Map(readMigrationFiles(migrationsFolder).map((migration) => [migration.name, migration.checksum]))
  for (const { name, checksum } of manifest.migrations) {
    if (!known.has(name))
      throw new Error(
        `The backup was made by a later version of Fryward (migration ${name}). Restore it with that version.`,
      )
    if (known.get(name) !== checksum)
      throw new Error(
        `The backup was made with another form of the migration ${name}. Restore it with the version that made it.`,
      )
  }
}

async function assertEmpty(connectionString: string): Promise<void> {
  const table = await findFilledTable(connectionString)
  if (table !== null)
    throw new Error(
      `The database is not empty (table ${table} has rows). Restore into a new database, or a new DATA_DIR.`,
    )
}

/** Name of a table of ours that has rows; null when there is none, migrated or not. */
export async function findFilledTable(connectionString: string): Promise<string | null> {
  const client = await openClient(connectionString)
  try {
    for (const table of await listTables(client)) {
      const found = await client.query(`SELECT 1 FROM ${quoted(table.name)} LIMIT 1`)
      if (found.rowCount) return table.name
    }
    return null
  } finally {
    await client.end()
  }
}

async function loadTables({
  connectionString,
  manifest,
  scratch,
  log,
}: {
  connectionString: string
  manifest: Manifest
  scratch: string
  log: (sentence: string) => void
}): Promise<void> {
  const client = await openClient(connectionString)
  try {
    await client.query("SET TIME ZONE 'UTC'; SET DateStyle = 'ISO'")
    await client.query('BEGIN')
    assertOurs(manifest.tables, await listTables(client))
    for (const table of manifest.tables) {
      log(`Restoring ${table.rows} rows of ${table.name}`)
      const columns = table.columns.map(quoted).join(', ')
      await pipeline(
        createReadStream(join(scratch, tableFile(table.name))),
        client.query(copyFrom(`COPY ${quoted(table.name)} (${columns}) FROM STDIN`)),
      )
      const loaded = await client.query<{ rows: string }>(`SELECT count(*) AS rows FROM ${quoted(table.name)}`)
      if (Number(loaded.rows[0]?.rows) !== table.rows)
        throw new Error(
          `Table ${table.name}: ${loaded.rows[0]?.rows} rows arrived of ${table.rows}. Nothing was restored.`,
        )
    }
    // Their second factors stayed behind with the key that they were encrypted with: asked for, they would shut them out.
    if (manifest.tables.some(({ name }) => name === 'two_factor'))
      await client.query('UPDATE "user" SET two_factor_enabled = false')
    await client.query('COMMIT')
  } finally {
    await client.end()
  }
}

/** Only tables and columns that the schema of the backup's version has, each table once: nothing of PostgreSQL's own. */
function assertOurs(named: Manifest['tables'], ours: readonly Table[]): void {
  const known = new Map(ours.map((table) => [table.name, new Set(table.columns)]))
  for (const { name, columns } of named) {
    const has = known.get(name)
    if (!has || !columns.every((column) => has.has(column)))
      throw new Error(`The backup names a table ${name} that no backup of this version has. Nothing was restored.`)
    known.delete(name)
  }
}

async function placePhoto({ from, to }: { from: string; to: string }): Promise<void> {
  await mkdir(dirname(to), { recursive: true })
  await copyFile(from, to)
}
