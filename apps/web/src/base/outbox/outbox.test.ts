import type { Command } from '@fryward/shared'
import { describe, expect, it } from 'vitest'
import { ApiProblem } from '@/base/api/problem.ts'
import { newId } from '@/testing/made-up.ts'
import { carla, keptNote, keptPhoto, sam } from '@/testing/made-up-commands.ts'
import { type KeptStore, memoryStore } from './kept-store.ts'
import { Outbox } from './outbox.ts'
import { emptyQueue } from './queue-state.ts'
import { idOf, type KeptDraft } from './queued.ts'
import type { Told } from './tabs.ts'

const here = newId()
const offline = new ApiProblem({ code: 'offline', detail: 'No answer.', status: 0 })
const refused = new ApiProblem({ code: 'not_allowed', detail: 'Not yours.', status: 403 })
const signedOut = new ApiProblem({ code: 'not_signed_in', detail: 'Sign in.', status: 401 })
const draft: KeptDraft = { value: { text: 'Hums' }, keptAt: '2026-11-29T06:59:00.000Z' }

/** A browser whose tabs share a device; what a server says to each try is handed in. */
function openBrowser(answer: (command: Command) => Promise<unknown>, store: KeptStore = memoryStore()) {
  const sent: string[] = []
  const clocks: (() => void)[] = []
  const drafts = new Map<string, KeptDraft>()
  const tabs: ((told: Told) => void)[] = []
  const locks = new Map<string, Promise<void>>()
  const openTab = () => {
    const seen = { now: emptyQueue }
    const outbox = new Outbox({
      openStore: async () => store,
      send: (command) => {
        sent.push(command.id)
        return answer(command)
      },
      alone: (lane, work) => {
        const done = (locks.get(lane) ?? Promise.resolve()).then(work)
        locks.set(lane, done)
        return done
      },
      otherTabs: (hear) => {
        tabs.push(hear)
        return (told) => tabs.filter((one) => one !== hear).forEach((tell) => void tell(told))
      },
      publish: (state) => {
        seen.now = state
      },
      later: (_ms, run) => {
        clocks.push(run)
        return () => void clocks.splice(clocks.indexOf(run), 1)
      },
      giveBack: async (key, typed) => void drafts.set(key, typed),
    })
    return { outbox, seen }
  }
  return {
    ...openTab(),
    openTab,
    store,
    sent,
    drafts,
    ring: () => clocks.splice(0).forEach((run) => void run()),
    clocks,
  }
}

describe('a command', () => {
  it('goes out once however often it is meant, and leaves the device with its answer', async () => {
    const { outbox, sent, store } = openBrowser(async () => 'noted')
    const note = keptNote(here)
    expect(await Promise.all([outbox.put(note), outbox.put(note)])).toEqual(['noted', 'noted'])
    await expect.poll(store.queue).toEqual([])
    expect(sent).toEqual([idOf(note)])
  })

  it('waits where no answer comes, those behind it too, and all go out in their order under their own ids', async () => {
    let isCut = true
    const { outbox, sent, seen, ring, clocks } = openBrowser(async () => {
      if (isCut) throw offline
      return 'noted'
    })
    const notes = [keptNote(here), keptNote(here), keptNote(here)]
    const answers = Promise.all(notes.map((note) => outbox.put(note)))
    await expect.poll(() => seen.now.stuck).toBe('network')
    expect(seen.now.waiting).toHaveLength(3)
    await expect.poll(() => clocks.length).toBe(1)
    expect(new Set(sent)).toEqual(new Set([idOf(notes[0]!)]))
    isCut = false
    ring()
    expect(await answers).toEqual(['noted', 'noted', 'noted'])
    expect(sent.slice(-3)).toEqual(notes.map(idOf))
    await expect.poll(() => seen.now).toEqual({ ...emptyQueue, isLasting: false })
  })

  it('is asked about no sooner because more is meant behind it, where the server is to be waited for', async () => {
    const { outbox, sent, seen, ring } = openBrowser(async () => {
      throw new ApiProblem({ code: 'internal', detail: 'Failed.', status: 500 })
    })
    const first = keptNote(here)
    void outbox.put(first)
    await expect.poll(() => seen.now.stuck).toBe('server')
    for (let more = 0; more < 7; more += 1) void outbox.put(keptNote(here))
    await expect.poll(() => seen.now.waiting).toHaveLength(8)
    expect(sent).toEqual([idOf(first)])
    ring()
    await expect.poll(() => sent).toEqual([idOf(first), idOf(first)])
    expect(seen.now.refused).toEqual([])
  })

  it('does not wait for a photo that takes long', async () => {
    const { outbox } = openBrowser(async ({ route }) => (route === 'addPhoto' ? new Promise(() => {}) : 'noted'))
    void outbox.put(keptPhoto(here))
    expect(await outbox.put(keptNote(here))).toBe('noted')
  })

  it('that a page left behind is sent by the next one', async () => {
    const store = memoryStore()
    const notes = [keptNote(here), keptNote(here)]
    for (const note of notes) await store.add(note)
    const { outbox, sent } = openBrowser(async () => 'noted', store)
    await outbox.start(carla)
    expect(sent).toEqual(notes.map(idOf))
    expect(await store.queue()).toEqual([])
  })

  it('is its person’s alone: another one’s page sees only that it is there', async () => {
    const store = memoryStore()
    await store.add(keptNote(here, carla))
    const { outbox, sent, seen } = openBrowser(async () => 'noted', store)
    await outbox.start(sam)
    expect(sent).toEqual([])
    expect(seen.now).toMatchObject({ waiting: [], others: [{ name: 'Carla', count: 1 }] })
    await outbox.start(carla)
    expect(sent).toHaveLength(1)
  })

  it('waits for its person to sign in', async () => {
    let isIn = false
    const { outbox, seen, clocks } = openBrowser(async () => {
      if (!isIn) throw signedOut
      return 'noted'
    })
    const answer = outbox.put(keptNote(here))
    await expect.poll(() => seen.now.stuck).toBe('signed_out')
    expect(clocks).toEqual([])
    isIn = true
    await outbox.start(carla)
    expect(await answer).toBe('noted')
  })
})

describe('a refusal', () => {
  const kept = { draftKey: 'note', draft }
  const refuse = async () => {
    throw refused
  }

  it('goes back to the form that is still there, and what was typed to the drafts', async () => {
    const { outbox, store, drafts, seen } = openBrowser(refuse)
    const problem = outbox.put(keptNote(here, carla, kept)).catch((error: unknown) => error)
    expect(await problem).toMatchObject({ code: 'not_allowed', detail: 'Not yours.' })
    expect(await store.queue()).toEqual([])
    expect(drafts.get('note')).toEqual(draft)
    await expect.poll(() => seen.now.refused).toEqual([])
  })

  it('stays on the device where the form has gone, holds nobody up, and goes when it is corrected', async () => {
    let isRefusing = true
    const { outbox, store, seen } = openBrowser(async () => {
      if (isRefusing) throw refused
      return 'noted'
    })
    const note = keptNote(here, carla, kept)
    const answer = outbox.put(note).catch((error: unknown) => error)
    outbox.leave(idOf(note))
    await answer
    await expect.poll(() => seen.now.refused).toMatchObject([{ draft, refusal: { detail: 'Not yours.' } }])
    isRefusing = false
    expect(await outbox.put(keptNote(here))).toBe('noted')
    expect(seen.now.refused).toHaveLength(1)
    expect(await outbox.put(keptNote(here, carla, kept))).toBe('noted')
    await expect.poll(store.queue).toEqual([])
  })

  it('is dropped when somebody says so', async () => {
    const store = memoryStore()
    const note = keptNote(here, carla, { refusal: refused })
    await store.add(note)
    const { outbox, seen, sent } = openBrowser(refuse, store)
    await outbox.start(carla)
    expect(seen.now.refused).toHaveLength(1)
    await outbox.drop(idOf(note))
    expect(seen.now.refused).toEqual([])
    expect(sent).toEqual([])
  })
})

describe('several tabs', () => {
  it('send a command once, and the answer reaches the tab that asked', async () => {
    let isCut = true
    const browser = openBrowser(async () => {
      if (isCut) throw offline
      return 'noted'
    })
    const other = browser.openTab()
    const note = keptNote(here)
    const answer = browser.outbox.put(note)
    await expect.poll(() => browser.seen.now.stuck).toBe('network')
    expect(other.seen.now.others).toHaveLength(1)
    browser.sent.splice(0)
    isCut = false
    await Promise.all([other.outbox.start(carla), browser.outbox.wake()])
    expect(await answer).toBe('noted')
    expect(browser.sent).toEqual([idOf(note)])
    await expect.poll(() => other.seen.now.waiting).toEqual([])
  })
})
