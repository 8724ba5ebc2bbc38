import type { Command, Id } from '@fryward/shared'
import { ApiProblem, type ProblemParts, toProblemParts } from '@/base/api/problem.ts'
import type { SignedIn } from '@/base/room/person-context.tsx'
import type { KeptStore } from './kept-store.ts'
import { makeLaneRunner } from './lane-runner.ts'
import { headOf, laneOf, lanesOf, seeQueue } from './lanes.ts'
import type { QueueState } from './queue-state.ts'
import { idOf, type KeptDraft, type Queued, type Stuck } from './queued.ts'
import type { Answered, Told } from './tabs.ts'
import { makeWaiters } from './waiters.ts'
import { whatNext } from './what-next.ts'

export type OutboxParts = {
  openStore: () => Promise<KeptStore>
  send: (command: Command, onProgress: (share: number) => void) => Promise<unknown>
  alone: (lane: string, work: () => Promise<void>) => Promise<void>
  otherTabs: (hear: (told: Told) => void) => (told: Told) => void
  publish: (state: QueueState) => void
  /** @returns calls it off. */
  later: (ms: number, run: () => void) => () => void
  /** What was typed into a form is a draft again, where nothing newer is. */
  giveBack: (key: string, draft: KeptDraft) => Promise<void>
}

/**
 * Keeps commands on the device and sends them, each lane in its order, until each has an answer. A command waits, then is
 * booked (and gone from the device) or refused. A refusal goes back to the form it came from if that is still on the
 * screen, and what was typed is a draft again; else it stays on the device until it is corrected or dropped.
 */
export class Outbox {
  readonly #parts: OutboxParts
  readonly #store: Promise<KeptStore>
  readonly #waiters = makeWaiters()
  readonly #runner: ReturnType<typeof makeLaneRunner>
  readonly #tell: (told: Told) => void
  /** Tries in a row that went wrong at the head of a lane. */
  readonly #tries = new Map<string, number>()
  #person: SignedIn | null = null
  #stuck: Stuck | null = null

  constructor(parts: OutboxParts) {
    this.#parts = parts
    this.#store = parts.openStore()
    this.#runner = makeLaneRunner({ ...parts, sendHead: (lane) => this.#sendHead(lane) })
    this.#tell = parts.otherTabs(({ answered }) => void this.#hear(answered))
  }

  /** Sends what waits of this person, from now on; null where nobody is signed in. */
  async start(person: SignedIn | null): Promise<void> {
    this.#person = person
    this.#stuck = null
    await this.#show()
    await this.#sendAll()
  }

  /** The network may be back. */
  async wake(): Promise<void> {
    this.#tries.clear()
    await this.#sendAll()
  }

  /**
   * Keeps a command and sends it as soon as it can be; the same one once more only waits for the first one's answer.
   * @returns what the API answered.
   * @throws ApiProblem what it said against it.
   */
  async put(queued: Queued, onProgress: (share: number) => void = () => {}): Promise<unknown> {
    const id = idOf(queued)
    const known = this.#waiters.promiseOf(id)
    if (known) return known
    this.#person ??= { id: queued.command.personId, name: queued.personName }
    const answer = this.#waiters.add(id, onProgress)
    try {
      await (await this.#store).add(queued)
    } catch (cause) {
      this.#waiters.forget(id)
      throw noRoomLeft(cause)
    }
    this.#tell({})
    await this.#show()
    const lane = laneOf(queued.command)
    // Where the server asked to wait, another command behind the first one is no reason to ask it sooner.
    if (!(this.#stuck === 'server' && this.#runner.isWaiting(lane))) void this.#runner.run(lane)
    return answer
  }

  /** Whoever asked has gone from the screen. */
  leave(id: Id): void {
    this.#waiters.leave(id)
  }

  /** Takes a command off the device, with what was typed. */
  async drop(id: Id): Promise<void> {
    await (await this.#store).remove(id)
    this.#tell({})
    await this.#show()
  }

  async #show(): Promise<void> {
    const store = await this.#store
    const seenBy = { personId: this.#person?.id ?? null, stuck: this.#stuck, isLasting: store.isLasting }
    this.#parts.publish(seeQueue(await store.queue(), seenBy))
  }

  async #sendAll(): Promise<void> {
    const queue = await (await this.#store).queue()
    const lanes = this.#person ? lanesOf(queue, this.#person.id) : []
    await Promise.all(lanes.map((lane) => this.#runner.run(lane)))
  }

  async #sendHead(lane: string): Promise<boolean> {
    const queue = await (await this.#store).queue()
    const head = this.#person ? headOf(queue, lane, this.#person.id) : undefined
    if (!head) return false
    const answered = await this.#try(head.command)
    const next = whatNext(answered.problem ?? null, this.#tries.get(lane) ?? 0)
    if (next.is === 'again') {
      this.#tries.set(lane, (this.#tries.get(lane) ?? 0) + 1)
      this.#stuck = next.why
      this.#runner.runAfter(next.afterMs, lane)
    } else if (next.is === 'sign_in') {
      this.#stuck = 'signed_out'
    } else {
      this.#tries.delete(lane)
      this.#stuck = null
      if (next.is === 'booked') await this.#takeYes(answered)
      else await this.#takeNo(head, answered)
    }
    await this.#show()
    return next.is === 'booked' || next.is === 'refused'
  }

  async #try(command: Command): Promise<Answered> {
    try {
      const answer = await this.#parts.send(command, (share) => this.#waiters.tellProgress(command.id, share))
      return { id: command.id, answer }
    } catch (error) {
      return { id: command.id, problem: toProblemParts(error) }
    }
  }

  /** Told before it leaves the device: in a crash between the two it is sent once more, and booked once. */
  async #takeYes(answered: Answered): Promise<void> {
    this.#waiters.settle(answered)
    this.#tell({ answered })
    await (await this.#store).remove(answered.id)
    this.#tell({})
  }

  /** Kept before it is told: a crash loses neither the refusal nor what was typed. */
  async #takeNo(head: Queued, answered: Answered & { problem?: ProblemParts }): Promise<void> {
    await (await this.#store).replace({ ...head, refusal: answered.problem })
    this.#tell({ answered })
    await this.#hear(answered)
  }

  async #hear(answered: Answered | undefined): Promise<void> {
    if (answered?.problem && this.#waiters.isOnScreen(answered.id)) await this.#takeBack(answered.id)
    if (answered) this.#waiters.settle(answered)
    await this.#show()
  }

  /** A refused command leaves the queue for the form it came from. */
  async #takeBack(id: Id): Promise<void> {
    const store = await this.#store
    const queued = (await store.queue()).find((one) => idOf(one) === id)
    if (queued?.draftKey !== undefined && queued.draft) await this.#parts.giveBack(queued.draftKey, queued.draft)
    await store.remove(id)
    this.#tell({})
  }
}

const noRoomLeft = (cause: unknown) =>
  new ApiProblem({
    code: 'no_room_left',
    detail: 'This device has no room to keep this. Nothing was sent. Free some room on it, then try again.',
    status: 0,
    cause,
  })
