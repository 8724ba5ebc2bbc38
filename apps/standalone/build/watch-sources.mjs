// npm run dev: the compiler stays and writes what changed; the running server restarts its parts from that.
import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { compiled } from './steps.mjs'

export function watchSources(root) {
  const compiler = join(root, 'node_modules/typescript/bin/tsc')
  const list = [compiler, '-b', '--watch', '--preserveWatchOutput', ...compiled]
  const child = spawn(process.execPath, list, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'], detached: true })
  // The compiler is a native program behind a small script: the whole group has to go.
  return () => (process.platform === 'win32' ? child.kill() : endGroup(child.pid))
}

function endGroup(pid) {
  try {
    process.kill(-pid, 'SIGTERM')
  } catch (thrown) {
    if (thrown.code !== 'ESRCH') throw thrown // gone already
  }
}
