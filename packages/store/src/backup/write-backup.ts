import { createHash } from 'node:crypto'
import { createReadStream, createWriteStream, existsSync } from 'node:fs'
import { mkdtemp, readdir, rm, stat } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, sep } from 'node:path'
import { Transform, type Writable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { createGzip } from 'node:zlib'
import type pg from 'pg'
import { to as copyTo } from 'pg-copy-streams'
import { pack as createPack, type Pack } from 'tar-stream'
import { openClient } from '../open-client.ts'
import { type Manifest, manifestName, photoFile, tableFile } from './manifest.ts'
import { listTables, quoted, type Table } from './tables.ts'

// What opens a door is no part of what a room is: sessions, one-time tokens, and second factors, which are encrypted with
// a key of this server and no use to another, as is the password of a broker. Counts of tries are of the minute.
const emptied = new Set([
  ...['session', 'verification', 'two_factor', 'used_code', 'password_reset', 'rate_limit', 'broker_password'],
])

export type WriteBackup = { connectionString: string; photosFolder?: string | undefined; output: Writable; now: string }

/**
 * One file with everything: every table as of one moment (a read-only snapshot; writers are not held up), the photos,
 * the schema's version and a checksum for each. A gzipped tar, so that any machine can look inside.
 */
export async function writeBackup({ connectionString, photosFolder, output, now }: WriteBackup): Promise<Manifest> {
  const client = await openClient(connectionString)
  const scratch = await mkdtemp(join(tmpdir(), 'fryward-backup-'))
  const tar = createPack()
  try {
    await client.query("SET TIME ZONE 'UTC'; SET DateStyle = 'ISO'")
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY')
    const gzip = createGzip()
    const written = pipeline(tar, gzip, output)
    // A failure below destroys the pack; the pipeline's own error is then only its echo.
    written.catch(() => undefined)
    const tables: Manifest['tables'] = []
    for (const table of await listTables(client)) {
      tables.push(await addTable({ tar, client, table, scratch }))
      // Whoever waits for it sees it grow, however busy the server is.
      gzip.flush()
    }
    const photos = photosFolder && existsSync(photosFolder) ? await addPhotos(tar, photosFolder) : []
    const migrations = await client.query<{ name: string; checksum: string }>(
      'SELECT migration_name AS name, checksum FROM _prisma_migrations WHERE finished_at IS NOT NULL ORDER BY 1',
    )
    const manifest: Manifest = {
      format: 'fryward-backup',
      formatVersion: 1,
      createdAt: now,
      migrations: migrations.rows,
      tables,
      photos,
    }
    tar.entry({ name: manifestName }, JSON.stringify(manifest, null, 2))
    tar.finalize()
    await written
    return manifest
  } catch (error) {
    tar.destroy()
    throw error
  } finally {
    await client.end()
    await rm(scratch, { recursive: true, force: true })
  }
}

async function addTable({
  tar,
  client,
  table,
  scratch,
}: {
  tar: Pack
  client: pg.Client
  table: Table
  scratch: string
}): Promise<Manifest['tables'][number]> {
  // A tar entry begins with its size, which COPY does not know beforehand: through a file, so that memory stays flat.
  const file = join(scratch, `${table.name}.copy`)
  const columns = table.columns.map(quoted).join(', ')
  const kept = `FROM ${quoted(table.name)} WHERE ${!emptied.has(table.name)}`
  const rows = await client.query<{ rows: string }>(`SELECT count(*) AS rows ${kept}`)
  await pipeline(client.query(copyTo(`COPY (SELECT ${columns} ${kept}) TO STDOUT`)), createWriteStream(file))
  const entry = await addFile({ tar, name: tableFile(table.name), file })
  await rm(file)
  return { name: table.name, columns: table.columns, rows: Number(rows.rows[0]?.rows ?? 0), ...entry }
}

async function addPhotos(tar: Pack, folder: string): Promise<Manifest['photos']> {
  const photos: Manifest['photos'] = []
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !entry.name.endsWith('.jpg')) continue
    const file = join(entry.parentPath, entry.name)
    const path = file
      .slice(folder.length + 1)
      .split(sep)
      .join('/')
    photos.push({ path, ...(await addFile({ tar, name: photoFile(path), file })) })
  }
  return photos
}

async function addFile({
  tar,
  name,
  file,
}: {
  tar: Pack
  name: string
  file: string
}): Promise<{ bytes: number; sha256: string }> {
  const { size: bytes } = await stat(file)
  const hash = createHash('sha256')
  const hashing = new Transform({
    transform(chunk, _encoding, done) {
      hash.update(chunk)
      done(null, chunk)
    },
  })
  await pipeline(createReadStream(file), hashing, tar.entry({ name, size: bytes }))
  return { bytes, sha256: hash.digest('hex') }
}
