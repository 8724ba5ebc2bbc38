import { spawn } from 'node:child_process'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { openClient } from '@fryward/store'
import { z } from 'zod'
import { type InstallationDatabase, isEmpty, migrate } from './database.ts'
import { underSupervision } from './parts/part.ts'
import { quietly } from './quietly.ts'
import { isLoopback, type Settings } from './settings.ts'
import { messageOf, StartProblem } from './start-problem.ts'
import { writeFileAtomically } from './write-file.ts'

const SignInsSchema = z.object({
  people: z.array(z.object({ role: z.string(), email: z.string(), password: z.string() })),
})
export type DemoSignIns = z.infer<typeof SignInsSchema>

export type DemoPlan = {
  settings: Settings
  database: InstallationDatabase
  /** The project's `prisma/demo/seed.mjs`. */
  seedModule: string
  environment: Record<string, string>
  log: (sentence: string) => void
  signal: AbortSignal
}

/** Fills an empty database with the demo room where that is wanted. Gives the sign-ins, now or from the first time. */
export async function ensureDemoRoom(plan: DemoPlan): Promise<DemoSignIns | undefined> {
  const { settings, database, log } = plan
  const signInsFile = join(settings.DATA_DIR, 'secrets', 'demo-sign-ins.json')
  const begunFile = join(settings.DATA_DIR, 'demo-seeding-begun')
  if (existsSync(begunFile)) await clearHalfSeeded(database, begunFile, log)
  if (!(await isEmpty(database.connectionString))) {
    if (!existsSync(signInsFile)) return undefined
    return SignInsSchema.parse(JSON.parse(readFileSync(signInsFile, 'utf8')))
  }
  rmSync(signInsFile, { force: true }) // of a database that is gone
  if (!isWanted(settings)) return undefined
  log('Filling the empty database with the demo room (SEED_DEMO=0 leaves it out)')
  writeFileAtomically(begunFile, '')
  const signIns = await runSeed(plan)
  writeFileAtomically(signInsFile, JSON.stringify(signIns, undefined, 2))
  rmSync(begunFile)
  return signIns
}

/** Demo people have printed passwords: none where strangers can reach the server, unless asked for. */
function isWanted(settings: Settings): boolean {
  return settings.SEED_DEMO ?? (isLoopback(settings.HOST) && settings.PUBLIC_URL === undefined)
}

/** A seeding that was killed began in an empty database that no part was serving yet: nothing of anyone's is lost. */
async function clearHalfSeeded(
  { connectionString, embedded }: InstallationDatabase,
  begunFile: string,
  log: (sentence: string) => void,
): Promise<void> {
  if (embedded === undefined) {
    throw new StartProblem(
      `Filling the database with the demo room was interrupted; empty that database, remove ${begunFile}, and start again.`,
    )
  }
  log('The last start was interrupted while it filled the database; beginning again')
  const client = await openClient(connectionString)
  try {
    // The killed start's seeding may still be at it for a moment.
    await client.query(
      'SELECT pg_terminate_backend(pid, 5000) FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()',
    )
    await client.query('DROP SCHEMA public CASCADE; CREATE SCHEMA public')
  } finally {
    await client.end()
  }
  await migrate(connectionString, log)
  rmSync(begunFile)
}

function runSeed({ seedModule, environment, signal }: DemoPlan): Promise<DemoSignIns> {
  return new Promise((resolve, reject) => {
    const stdio = ['ignore', 'pipe', 'inherit', 'ipc'] as const
    const child = spawn(process.execPath, [quietly, '--import', underSupervision, seedModule], {
      env: environment,
      stdio: [...stdio],
      signal,
      killSignal: 'SIGKILL',
    })
    let output = ''
    child.stdout?.on('data', (chunk) => {
      output += chunk
    })
    child.on('error', reject)
    child.on('close', (code, how) => {
      if (code !== 0) {
        reject(
          new StartProblem(`The demo room could not be made (${code ?? how}); SEED_DEMO=0 npm start leaves it out.`),
        )
        return
      }
      try {
        resolve(SignInsSchema.parse(JSON.parse(output.trim().split('\n').at(-1) ?? '')))
      } catch (cause) {
        reject(new Error(`${seedModule} did not end with its sign-ins: ${messageOf(cause)}`, { cause }))
      }
    })
  })
}
