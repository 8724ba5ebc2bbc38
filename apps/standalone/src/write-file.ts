import { randomBytes } from 'node:crypto'
import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, readFileSync, renameSync, writeSync } from 'node:fs'
import { dirname } from 'node:path'

/** Writes the whole file or nothing of it, readable by its owner only unless `mode` says otherwise. */
export function writeFileAtomically(path: string, content: string, mode = 0o600): void {
  mkdirSync(dirname(path), { recursive: true })
  const unfinished = `${path}.${process.pid}.new`
  const file = openSync(unfinished, 'w', mode)
  try {
    writeSync(file, content)
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
  renameSync(unfinished, path)
}

/** The secret kept in `path`, made at the first call (32 random bytes, base64url) and never made again over an old one. */
export function readOrMakeSecret(path: string): string {
  if (!existsSync(path)) writeFileAtomically(path, `${randomBytes(32).toString('base64url')}\n`)
  const secret = readFileSync(path, 'utf8').trim()
  if (secret.length < 32)
    throw new Error(`${path} holds ${secret.length} characters; a secret of at least 32 was expected`)
  return secret
}
