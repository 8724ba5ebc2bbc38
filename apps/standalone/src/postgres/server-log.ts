import { copyFileSync, existsSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs'
import { giveTo, type ServerUser } from './server-user.ts'

const LOG_LIMIT_BYTES = 10_000_000

/** Makes the log that the server appends to, for its own user. */
export function prepareLog(log: string, user: ServerUser | undefined): void {
  if (existsSync(log)) turnOverLog(log)
  else writeFileSync(log, '', { mode: 0o600 })
  giveTo(user, log)
}

/**
 * Copies a log that has grown large aside and empties it: the server holds it open and goes on at its new end. What cannot
 * be copied is lost: whoever looks after the server goes on doing so, and it is the log that must give way.
 */
export function turnOverLog(log: string): void {
  const size = statSync(log, { throwIfNoEntry: false })?.size ?? 0
  if (size <= LOG_LIMIT_BYTES) return
  try {
    copyFileSync(log, `${log}.old`)
  } catch {
    // A full disk has no room for a word about it either; the owner is told of that on Today.
    rmSync(`${log}.old`, { force: true, recursive: true })
  }
  truncateSync(log)
}

export function lastLines(log: string): string {
  return existsSync(log) ? readFileSync(log, 'utf8').trim().split('\n').slice(-3).join(' | ') : 'none'
}
