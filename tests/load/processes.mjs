// What Linux says of a process: memory, and time on a processor.
import { readdirSync, readFileSync } from 'node:fs'

// sysconf(_SC_CLK_TCK) on every Linux that Node runs on.
const ticksPerSecond = 100

export function residentMb(pid) {
  const line = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))
  return line ? Math.round(Number(line[1]) / 1024) : Number.NaN
}

/** Seconds that a process has run until now. */
export const processorSeconds = (pid) => statOf(pid).ownS

/** The same with all that it has started, as PostgreSQL starts a process for each connection; what has ended is in it. */
export function processorSecondsOfAll(pid) {
  const { ownS, endedS } = statOf(pid)
  return childrenOf(pid).reduce((sum, child) => sum + child.ownS, ownS + endedS)
}

const childrenOf = (pid) =>
  readdirSync('/proc').flatMap((name) => {
    const stat = /^\d+$/.test(name) ? statOf(name) : null
    return stat?.parent === pid ? [stat] : []
  })

/** proc(5): after the name in brackets come state and parent, and from the 12th on user and system, own and of children that ended. */
function statOf(pid) {
  try {
    const after = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1).split(' ')
    const [user, system, endedUser, endedSystem] = after.slice(11, 15).map((ticks) => Number(ticks) / ticksPerSecond)
    return { parent: Number(after[1]), ownS: user + system, endedS: endedUser + endedSystem }
  } catch {
    // It ended while it was looked for.
    return null
  }
}
