import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { run } from './run.ts'
import { parseSettings } from './settings.ts'
import { messageOf, StartProblem } from './start-problem.ts'

export type MainOptions = { root: string; isDevelopment: boolean }

/** Starts everything in this terminal and gives the exit code once all of it has stopped. */
export async function main({ root, isDevelopment }: MainOptions): Promise<number> {
  const stop = new AbortController()
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => stop.abort())
  const stopFollowing = followNpm(() => stop.abort())
  const log = (sentence: string) => console.log(sentence)
  try {
    const envFile = join(root, '.env')
    if (existsSync(envFile)) process.loadEnvFile(envFile) // what is already set in the environment wins
    const settings = parseSettings(process.env, root)
    await run({ settings, root, isDevelopment, log, signal: stop.signal })
    return 0
  } catch (thrown) {
    if (thrown instanceof StartProblem) console.error(`\n${thrown.message}`)
    else console.error(`\nFryward could not go on: ${messageOf(thrown)}\n`, thrown)
    return 1
  } finally {
    stopFollowing()
  }
}

const LOOK_EVERY_MS = 500

/**
 * A SIGTERM to `npm start` ends npm and the shell between us, and reaches nobody else: we see only that our parent is
 * another one. Without npm a parent may end as it likes (a script that starts us in the background).
 */
function followNpm(stop: () => void): () => void {
  if (!/^(start|dev)$/.test(process.env.npm_lifecycle_event ?? '')) return () => {}
  const parent = process.ppid
  const timer = setInterval(() => {
    if (process.ppid !== parent) stop()
  }, LOOK_EVERY_MS)
  return () => clearInterval(timer)
}
