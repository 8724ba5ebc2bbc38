import { spawn } from 'node:child_process'
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { startEmbeddedPostgres } from '@fryward/standalone'
import { afterAll, describe, expect, it } from 'vitest'
import { withClient } from '../support/database-admin.ts'
import { makeDataFolder, removeDataFolder } from '../support/standalone-run.ts'

const dataDir = makeDataFolder()
mkdirSync(dataDir)
// Durable, as in earnest: a throw-away server may lose its last commits to kill -9.
const start = () => startEmbeddedPostgres({ dataDir })
const ask = (url: string, question: string) =>
  withClient(url, async (client) => Object.values((await client.query(question)).rows[0] ?? {})[0])

describe('the embedded PostgreSQL', () => {
  afterAll(() => removeDataFolder(dataDir))

  it('is version 18 in UTF-8 with the same order of text on every machine, and asks for its password', async () => {
    const server = await start()
    expect(await ask(server.connectionString, 'SHOW server_version')).toMatch(/^18/)
    expect(await ask(server.connectionString, 'SHOW server_encoding')).toBe('UTF8')
    const locale = `SELECT datlocprovider::text || ' ' || datlocale FROM pg_database WHERE datname = 'fryward'`
    expect(await ask(server.connectionString, locale)).toBe('b C.UTF-8')
    const stranger = new URL(server.connectionString)
    stranger.password = 'guess'
    await expect(ask(stranger.href, 'SELECT 1')).rejects.toThrow('password authentication failed')
    await server.stop()
  })

  it('keeps its password in a file that only its owner reads, and never makes it again', async () => {
    const file = join(dataDir, 'secrets/postgres-password')
    const before = readFileSync(file, 'utf8')
    if (process.platform !== 'win32') expect(statSync(file).mode & 0o777).toBe(0o600)
    const server = await start()
    expect(readFileSync(file, 'utf8')).toBe(before)
    await server.stop()
  })

  it('is taken over when an earlier run left it running', async () => {
    const first = await start()
    const second = await start()
    expect([first.isAdopted, second.isAdopted, second.pid]).toEqual([false, true, first.pid])
    await second.stop()
  })

  it('starts after kill -9 although the number in its lock file belongs to another program by now', async () => {
    const first = await start()
    await withClient(first.connectionString, (client) => client.query('CREATE TABLE kept (n int)'))
    process.kill(first.pid, 'SIGKILL')
    const lock = join(dataDir, 'postgres/18/postmaster.pid')
    const stranger = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)'], { stdio: 'ignore' })
    writeFileSync(lock, readFileSync(lock, 'utf8').replace(/^\d+/, String(stranger.pid)))
    const second = await start()
    expect(second.isAdopted).toBe(false)
    expect(await ask(second.connectionString, 'SELECT count(*)::int FROM kept')).toBe(0)
    stranger.kill('SIGKILL')
    await second.stop()
  })

  it('works, and is found again, in a folder that its own user cannot enter', async () => {
    const parent = mkdtempSync(join(tmpdir(), 'fryward-closed-'))
    chmodSync(parent, 0o700) // as the home of root
    const closed = { dataDir: join(parent, 'data'), isDurable: false }
    const first = await startEmbeddedPostgres(closed)
    await withClient(first.connectionString, (client) => client.query('CREATE TABLE kept (n int)'))
    await first.stop()
    const second = await startEmbeddedPostgres(closed)
    expect(await ask(second.connectionString, 'SELECT count(*)::int FROM kept')).toBe(0)
    await second.stop()
    const pointer = join(closed.dataDir, 'postgres.path')
    expect(existsSync(pointer)).toBe(process.getuid?.() === 0)
    if (existsSync(pointer)) rmSync(readFileSync(pointer, 'utf8').trim(), { recursive: true })
    rmSync(parent, { recursive: true })
  })
})
