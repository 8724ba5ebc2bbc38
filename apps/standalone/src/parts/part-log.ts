import { existsSync, readFileSync } from 'node:fs'
import { basename, dirname } from 'node:path'
import type { Readable } from 'node:stream'
import { createStream, type RotatingFileStream } from 'rotating-file-stream'
import { z } from 'zod'

const LOG_LIMIT = '10M'
const OLD_LOGS = 2
// A full or failing disk is asked again after this long; what a part says meanwhile is not kept.
const REOPEN_MS = 10_000

/**
 * Keeps what a part says in a file that turns over while the part runs, so that it never fills the disk. A write that
 * fails costs the lines, never the part: its output is read on in any case.
 */
export class PartLog {
  readonly path: string
  readonly #limit: string
  #file: RotatingFileStream | undefined
  #closedUntil = 0

  constructor(path: string, limit = LOG_LIMIT) {
    this.path = path
    this.#limit = limit
  }

  follow(output: Readable): void {
    output.on('data', (chunk: Buffer) => this.#open()?.write(chunk))
  }

  #open(): RotatingFileStream | undefined {
    if (this.#file !== undefined || Date.now() < this.#closedUntil) return this.#file
    const file = createStream((index) => (index ? oldName(this.path, index) : basename(this.path)), {
      path: dirname(this.path),
      size: this.#limit,
      rotate: OLD_LOGS,
      mode: 0o600,
    })
    file.on('error', () => {
      // Told by the part's own troubles, if at all: there is no disk left to tell it to.
      if (this.#file === file) this.#file = undefined
      this.#closedUntil = Date.now() + REOPEN_MS
    })
    this.#file = file
    return file
  }

  /** The last line that reads like an explanation, from a log of JSON lines or of plain text. */
  lastWords(): string {
    if (!existsSync(this.path)) return ''
    const lines = readFileSync(this.path, 'utf8').trim().split('\n').slice(-40).reverse()
    for (const line of lines) {
      const told = explanationIn(line)
      if (told !== undefined) return `: ${told.slice(0, 300)}`
    }
    return ''
  }
}

const oldName = (path: string, index: number | Date) => `${basename(path, '.log')}.${String(index)}.log`

const LogLineSchema = z.object({
  level: z.number(),
  msg: z.string().default(''),
  err: z.object({ message: z.string() }).optional(),
})

function explanationIn(line: string): string | undefined {
  if (!line.startsWith('{')) return /^(\w*Error|Fryward|The )/.test(line) ? line : undefined
  try {
    const parsed = LogLineSchema.safeParse(JSON.parse(line))
    if (!parsed.success || parsed.data.level < 50) return undefined // 50: pino's `error`
    return parsed.data.err?.message ?? parsed.data.msg
  } catch {
    return undefined // a line cut off by the crash
  }
}
