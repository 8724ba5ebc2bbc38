import { type ChildProcess, fork, type StdioOptions } from 'node:child_process'
import { z } from 'zod'
import { quietly } from '../quietly.ts'
import { messageOf } from '../start-problem.ts'
import { alive, areYouAlive } from './alive.ts'
import { PartLog } from './part-log.ts'
import { RestartCount } from './restart-count.ts'

const ReadySchema = z.object({ ready: z.literal(true), claimCode: z.string().nullish() })

export type PartOptions = {
  /** How people know it: API, scheduler, dashboard. */
  name: string
  modulePath: string
  environment: Record<string, string>
  logFile: string
  onClaimCode?: (code: string) => void
  /** Told one sentence when the part ended by itself or hung, and is started again. */
  onRestart: (sentence: string) => void
}

type Waiting = { onReady: () => void; onEarlyEnd: (reason: Error) => void }

const STOP_LIMIT_MS = 10_000
const ASK_EVERY_MS = 5000
// Counted in questions, not in time: after the machine slept, nobody has missed any. A part that is only busy (a demo
// room being built, a machine under load) answers within this; one that is stopped or loops does not. common practice
const MOST_UNANSWERED = 4

/**
 * One of Fryward's processes. States: starting -> ready -> (crashed or hung -> starting)* -> stopped. A crash before the
 * first ready is not repeated: it would fail again for the same reason. After it, there is no last restart: whoever
 * sleeps while a disk fills or a cable is out finds the room served again once that is over.
 */
export class Part {
  readonly #options: PartOptions
  readonly #log: PartLog
  readonly #restarts = new RestartCount()
  #child: ChildProcess | undefined
  #isStopping = false
  #wasReady = false
  #timer: NodeJS.Timeout | undefined

  constructor(options: PartOptions) {
    this.#options = options
    this.#log = new PartLog(options.logFile)
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

  #launch(waiting: Waiting): void {
    const startedAt = Date.now()
    const ended = (how: string) => this.#onExit({ how, ranMs: Date.now() - startedAt, waiting })
    // A machine without memory, processes or open files left refuses either here or by an error instead of an exit.
    const refused = (error: unknown) => ended(`it could not be started, ${messageOf(error)}`)
    this.#child = undefined
    try {
      const child = this.#fork()
      if (child.pid === undefined) return void child.once('error', refused)
      this.#child = child
      this.#follow(child, waiting, ended)
    } catch (error) {
      refused(error)
    }
  }

  #fork(): ChildProcess {
    const { modulePath, environment } = this.#options
    // Its own process group: a Ctrl-C in the terminal reaches only us, and we end the parts in order.
    const execArgv = ['--enable-source-maps', quietly, '--import', underSupervision]
    const stdio: StdioOptions = ['ignore', 'pipe', 'pipe', 'ipc']
    return fork(modulePath, [], { env: environment, detached: true, stdio, execArgv })
  }

  #follow(child: ChildProcess, waiting: Waiting, onExit: (how: string) => void): void {
    for (const output of [child.stdout, child.stderr]) if (output) this.#log.follow(output)
    child.on('message', (message) => {
      const parsed = ReadySchema.safeParse(message)
      if (!parsed.success) return
      if (parsed.data.claimCode) this.#options.onClaimCode?.(parsed.data.claimCode)
      this.#wasReady = true
      waiting.onReady()
    })
    child.on('error', (error) => waiting.onEarlyEnd(error))
    const isHung = watchOver(child)
    child.on('exit', (code, signal) => onExit(isHung() ? 'it no longer answered' : `${code ?? signal}`))
  }

  #onExit(end: { how: string; ranMs: number; waiting: Waiting }): void {
    const { name, logFile, onRestart } = this.#options
    if (this.#isStopping) {
      end.waiting.onEarlyEnd(new Error(`The ${name} was stopped before it was ready.`))
      return
    }
    const story = `The ${name} ended by itself (${end.how}${this.#log.lastWords()})`
    if (!this.#wasReady) {
      end.waiting.onEarlyEnd(new Error(`${story}; the whole story is in ${logFile}.`))
      return
    }
    const delayMs = this.#restarts.next(end.ranMs)
    const { inARow } = this.#restarts
    onRestart(`${story}${inARow > 1 ? `, ${inARow} times in a row` : ''}; starting it again.`)
    this.#timer = setTimeout(() => this.#launch({ onReady: () => {}, onEarlyEnd: () => {} }), delayMs)
  }
}

export const underSupervision = new URL('./under-supervision.js', import.meta.url).href

/** Asks a part whether it lives and kills one that does not answer any more. Gives whether that is how it ended. */
function watchOver(child: ChildProcess): () => boolean {
  let unanswered = 0
  let isHung = false
  child.on('message', (message) => {
    if (message === alive) unanswered = 0
  })
  const timer = setInterval(() => {
    if (unanswered >= MOST_UNANSWERED) {
      isHung = true
      child.kill('SIGKILL')
      return
    }
    unanswered += 1
    // A channel that closed meanwhile is told by `exit`.
    if (child.connected) child.send(areYouAlive, () => {})
  }, ASK_EVERY_MS)
  child.on('exit', () => clearInterval(timer))
  return () => isHung
}
