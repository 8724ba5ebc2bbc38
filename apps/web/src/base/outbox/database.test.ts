import * as fake from 'fake-indexeddb'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { newId } from '@/testing/made-up.ts'
import { carla, keptNote } from '@/testing/made-up-commands.ts'
import { openStore } from './database.ts'
import { type KeptStore, memoryStore } from './kept-store.ts'
import { idOf } from './queued.ts'

const here = newId()
const draft = { value: { text: 'Hums' }, keptAt: '2026-11-29T06:59:00.000Z' }
const refusal = { code: 'not_allowed', detail: 'Not yours.', status: 403 } as const

// Each test has a disk of its own.
beforeEach(() => {
  for (const [name, value] of Object.entries(fake)) vi.stubGlobal(name, value)
  vi.stubGlobal('indexedDB', new fake.IDBFactory())
})
afterEach(() => void vi.unstubAllGlobals())

describe.each<[string, () => Promise<KeptStore>]>([
  ['on the device', openStore],
  ['in a browser that lets nothing be kept', async () => memoryStore()],
])('what is kept %s', (_where, open) => {
  it('comes in the order it was put, each once, and goes one by one', async () => {
    const store = await open()
    const [first, second, third] = [keptNote(here), keptNote(here), keptNote(here)]
    for (const note of [first, second, first, third]) await store.add(note)
    expect((await store.queue()).map(idOf)).toEqual([first, second, third].map(idOf))
    await store.replace({ ...second, refusal })
    await store.remove(idOf(first))
    expect(await store.queue()).toEqual([{ ...second, refusal }, third])
    // Somebody else was faster: nothing comes back to life.
    await store.replace(first)
    await store.remove(idOf(first))
    expect(await store.queue()).toHaveLength(2)
  })

  it('takes a draft into the queue in one step, and a refused command that this corrects out of it', async () => {
    const store = await open()
    await store.keepDraft('note', draft)
    await store.keepDraft('other', draft)
    expect(await store.drafts()).toEqual([
      ['note', draft],
      ['other', draft],
    ])
    await store.add(keptNote(here, carla, { draftKey: 'note', draft, refusal }))
    await store.add(keptNote(here, carla, { draftKey: 'other', draft, refusal }))
    expect(await store.drafts()).toEqual([])
    const corrected = keptNote(here, carla, { draftKey: 'note', draft })
    await store.add(corrected)
    expect((await store.queue()).map(({ draftKey }) => draftKey)).toEqual(['other', 'note'])
    await store.keepDraft('note', draft)
    await store.dropDraft('note')
    expect(await store.drafts()).toEqual([])
  })
})
