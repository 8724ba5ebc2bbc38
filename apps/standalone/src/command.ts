import { existsSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { backup, restore } from './archive.ts'
import { resetPassword } from './reset-password.ts'
import { parseSettings, type Settings } from './settings.ts'
import { messageOf, StartProblem } from './start-problem.ts'

export type Command = { root: string; words: string[]; folder: string }

/** What is done with an installation from its own machine: `words` name the command and what it is about. Exit code. */
export async function runCommand({ root, words, folder }: Command): Promise<number> {
  try {
    const envFile = join(root, '.env')
    if (existsSync(envFile)) process.loadEnvFile(envFile)
    await run(parseSettings(process.env, root), { words, folder })
    return 0
  } catch (thrown) {
    console.error(messageOf(thrown))
    return 1
  }
}

async function run(settings: Settings, { words, folder }: Omit<Command, 'root'>): Promise<void> {
  const [command, name] = words
  if (command === 'backup')
    return backup(settings, resolve(folder, name ?? `fryward-${new Date().toISOString().slice(0, 10)}.tar.gz`))
  if (command === 'restore' && name) return restore(settings, resolve(folder, name))
  if (command === 'reset-password' && name) return resetPassword(settings, name)
  throw new StartProblem(
    'Say what to do: npm run backup [FILE], npm run restore FILE, or npm run reset-password EMAIL.',
  )
}
