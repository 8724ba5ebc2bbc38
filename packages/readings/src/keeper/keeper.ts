import type { RefusedReading } from '@fryward/shared'
import type pg from 'pg'
import { createInbox } from '../keeping/inbox.ts'
import { judgePost, type KnownGauges } from '../post/judge-post.ts'
import { readSent, type Sent } from '../post/sent.ts'

/** What became of a post: how many readings were kept, and every one that was not, in the order of the post. */
export type Fate = { kept: number; refused: RefusedReading[] }

/** The one door that readings of devices come in by. */
export type Keeper = {
  /**
   * Resolves after the commit. What was sent is the keeper's from then on.
   * @throws UnreadablePost, InboxFull, or what the database says: nothing was kept. KeepingEnded: nobody knows.
   */
  keep: (sent: Sent, gauges: KnownGauges) => Promise<Fate>
  close: () => Promise<void>
}

/** Keeps in the thread that asks. Posts of all devices share commits. */
export function keepHere(pool: pg.Pool): Keeper {
  const inbox = createInbox(pool)
  return {
    keep: async (sent, gauges) => {
      const { kept, refused } = judgePost(readSent(sent), gauges)
      await inbox.keep(kept)
      return { kept: kept.length, refused }
    },
    close: async () => undefined,
  }
}
