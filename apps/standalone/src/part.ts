import { type ChildProcess, fork, type StdioOptions } from 'node:child_process'
import { closeSync, existsSync, openSync, readFileSync, renameSync, statSync } from 'node:fs'
import { z } from 'zod'
import { quietly } from './quietly.ts'

const ReadySchema = z.object({ ready: z.literal(true), claimCode: z.string().nullish() })

export type PartOptions = {
  /** How people know it: API, scheduler, dashboard. */
  name: string
  modulePath: string
  environment: Record<string, string>
  logFile: string
  onClaimCode?: (code: string) => void
  /** Told one sentence when the part crashed and is started again. */
  onRestart: (sentence: string) => void
  /** Told one sentence when the part crashed too often to go on. */
  onGiveUp: (sentence: string) => void
}

const RESTART_DELAYS_MS = [250, 1000, 3000, 8000, 15_000]
const STEADY_AFTER_MS = 5 * 60_000 // a part that ran this long has recovered: its restarts are forgotten
const STOP_LIMIT_MS = 10_000
const LOG_LIMIT_BYTES = 10_000_000

/**
 * One of Fryward's processes. States: starting -> ready -> (crashed -> starting)* -> stopped. A crash before the first
 * ready is not repeated: it would fail again for the same reason.
 */
export class Part {
  readonly #options: PartOptions
  #child: ChildProcess | undefined
  #isStopping = false
  #wasReady = false
  #restarts = 0
  #timer: NodeJS.Timeout | undefined

  constructor(options: PartOptions) {
    this.#options = options
  }

  get pid(): number | undefined {
    return this.#child?.pid
  }

  /** Resolves when the part says that it is ready; rejects with one sentence when it ends before that. */
  start(): Promise<void> {
    return new Promise((resolve, reject) => this.#launch({ onReady: resolve, onEarlyEnd: reject }))
  }

  /** Asks it to end, insists after ten seconds, and waits until it is gone. Safe to call twice. */
  async stop(): Promise<void> {
    this.#isStopping = true
    clearTimeout(this.#timer)
    const child = this.#child
    if (child === undefined || child.exitCode !== null || child.signalCode !== null) return
    const gone = new Promise((resolve) => child.once('exit', resolve))
    child.kill('SIGTERM')
    const insist = setTimeout(() => child.kill('SIGKILL'), STOP_LIMIT_MS)
    await gone
    clearTimeout(insist)
  }

  /** Ends and starts it again, as after an edit. */
  async restart(): Promise<void> {
    await this.stop()
    this.#isStopping = false
    await this.start()
  }

  #launch(waiting: { onReady: () => void; onEarlyEnd: (reason: Error) => void }): void {
    const { modulePath, environment, logFile } = this.#options
    const log = openLog(logFile)
    const startedAt = Date.now()
    // Its own process group: a Ctrl-C in the terminal reaches only us, and we end the parts in order.
    const execArgv = [
      '--enable-source-maps',
      quietly,
      '--import',
      new URL('./exit-with-parent.js', import.meta.url).href,
    ]
    const stdio: StdioOptions = ['ignore', log, log, 'ipc']
    const child = fork(modulePath, [], { env: environment, detached: true, stdio, execArgv })
    closeSync(log)
    this.#child = child
    child.on('message', (message) => {
      const parsed = ReadySchema.safeParse(message)
      if (!parsed.success) return
      if (parsed.data.claimCode) this.#options.onClaimCode?.(parsed.data.claimCode)
      this.#wasReady = true
      waiting.onReady()
    })
    child.on('error', (error) => waiting.onEarlyEnd(error))
    child.on('exit', (code, signal) => this.#onExit({ how: code ?? signal, startedAt, waiting }))
  }

  #onExit(end: {
    how: number | string | null
    startedAt: number
    waiting: { onEarlyEnd: (reason: Error) => void }
  }): void {
    const { name, logFile, onRestart, onGiveUp } = this.#options
    if (this.#isStopping) {
      end.waiting.onEarlyEnd(new Error(`The ${name} was stopped before it was ready.`))
      return
    }
    const story = `The ${name} ended by itself (${end.how}${lastWords(logFile)})`
    if (!this.#wasReady) {
      end.waiting.onEarlyEnd(new Error(`${story}; the whole story is in ${logFile}.`))
      return
    }
    if (Date.now() - end.startedAt > STEADY_AFTER_MS) this.#restarts = 0
    const delayMs = RESTART_DELAYS_MS[this.#restarts]
    if (delayMs === undefined) {
      onGiveUp(`${story} for the ${this.#restarts + 1}th time in a row; the whole story is in ${logFile}.`)
      return
    }
    this.#restarts += 1
    onRestart(`${story}; starting it again.`)
    this.#timer = setTimeout(() => this.#launch({ onReady: () => {}, onEarlyEnd: () => {} }), delayMs)
  }
}

function openLog(logFile: string): number {
  if (existsSync(logFile) && statSync(logFile).size > LOG_LIMIT_BYTES) renameSync(logFile, `${logFile}.old`)
  return openSync(logFile, 'a', 0o600)
}

/** The last line that reads like an explanation, from a log of JSON lines or of plain text. */
function lastWords(logFile: string): string {
  const lines = readFileSync(logFile, 'utf8').trim().split('\n').slice(-40).reverse()
  for (const line of lines) {
    const told = explanationIn(line)
    if (told !== undefined) return `: ${told.slice(0, 300)}`
  }
  return ''
}

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
