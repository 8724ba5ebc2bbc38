import { type DBSchema, openDB } from 'idb'
import { isCorrectedBy, type KeptStore, memoryStore } from './kept-store.ts'
import { idOf, type KeptDraft, type Queued } from './queued.ts'

/** Commands lie under a number that counts up: the order in which they were meant, whichever tab they came from. */
interface Kept extends DBSchema {
  queue: { key: number; value: Queued; indexes: { id: string } }
  drafts: { key: string; value: KeptDraft }
}

const name = 'fryward'
const version = 1
/** Written through to the disk before it counts as kept: a phone's battery may be out the next moment. */
const throughToDisk = { durability: 'strict' } as const

export async function openStore(): Promise<KeptStore> {
  const database = await openDB<Kept>(name, version, {
    upgrade: (fresh) => {
      fresh.createObjectStore('queue', { autoIncrement: true }).createIndex('id', 'command.id', { unique: true })
      fresh.createObjectStore('drafts')
    },
  })
  const add = async (queued: Queued) => {
    const work = database.transaction(['queue', 'drafts'], 'readwrite', throughToDisk)
    const queue = work.objectStore('queue')
    if ((await queue.index('id').getKey(idOf(queued))) === undefined) {
      for (let old = await queue.openCursor(); old !== null; old = await old.continue())
        if (isCorrectedBy(old.value, queued)) await old.delete()
      await queue.add(queued)
      if (queued.draftKey !== undefined) await work.objectStore('drafts').delete(queued.draftKey)
    }
    await work.done
  }
  /** What is no longer there is left so: another tab was faster. */
  const change = async (id: string, to: Queued | null) => {
    const work = database.transaction('queue', 'readwrite', throughToDisk)
    const key = await work.store.index('id').getKey(id)
    if (key !== undefined) await (to === null ? work.store.delete(key) : work.store.put(to, key))
    await work.done
  }
  return {
    isLasting: true,
    queue: () => database.getAll('queue'),
    add,
    replace: (queued) => change(idOf(queued), queued),
    remove: (id) => change(id, null),
    drafts: async () => {
      const work = database.transaction('drafts')
      const [keys, values] = await Promise.all([work.store.getAllKeys(), work.store.getAll()])
      return keys.flatMap((key, i): [string, KeptDraft][] => (values[i] ? [[key, values[i]]] : []))
    },
    keepDraft: async (key, draft) => void (await database.put('drafts', draft, key)),
    dropDraft: (key) => database.delete('drafts', key),
  }
}

let opened: Promise<KeptStore> | undefined

/** What this device keeps for the dashboard; in a browser that lets nothing be kept (a private window, say), for as long as the page lives. */
export const openKept = (): Promise<KeptStore> => {
  opened ??= openStore().catch(() => memoryStore())
  return opened
}
