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
  }
}
