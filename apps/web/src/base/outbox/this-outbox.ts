import { openKept } from './database.ts'
import { giveBackDraft } from './drafts.ts'
import { Outbox } from './outbox.ts'
import { publishQueue } from './queue-state.ts'
import { sendCommand } from './send.ts'
import { aloneAmongTabs, otherTabs } from './tabs.ts'

/** The one outbox of this page. */
export const outbox = new Outbox({
  openStore: openKept,
  send: sendCommand,
  alone: aloneAmongTabs,
  otherTabs,
  publish: publishQueue,
  later: (ms, run) => {
    const timer = window.setTimeout(run, ms)
    return () => window.clearTimeout(timer)
  },
  giveBack: giveBackDraft,
})
