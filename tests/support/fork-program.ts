import { type ChildProcess, fork } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { root } from './project-root.ts'

export type Program = {
  /** What it said once it was ready. */
  said: { url?: string }
  kill: (signal?: NodeJS.Signals) => Promise<void>
}

/** The API or the scheduler as a process of its own, ready. Its programs are packed by then. */
export async function forkProgram(program: 'api' | 'scheduler', environment: Record<string, string>): Promise<Program> {
  const child = fork(join(root, `apps/${program}/packed/main.js`), [], {
    execArgv: [],
    env: { PATH: process.env.PATH, LOG_LEVEL: 'silent', PORT: '0', ...environment },
  })
  const exit = once(child, 'exit')
  const said = await Promise.race([readinessOf(child), exit.then(([code]) => fail(`${program} ended with ${code}`))])
  return {
    said,
    kill: async (signal = 'SIGKILL') => {
      child.kill(signal)
      await exit
    },
  }
}

async function readinessOf(child: ChildProcess): Promise<Program['said']> {
  for (;;) {
    const [message] = (await once(child, 'message')) as [{ ready?: boolean; url?: string }]
    if (message.ready) return message
  }
}

const fail = (message: string): never => {
  throw new Error(message)
}
