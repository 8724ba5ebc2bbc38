import { InboxFull } from '../keeping/inbox.ts'
import type { KnownGauges } from '../post/judge-post.ts'
import { UnreadablePost } from '../post/posted.ts'
import type { Sent } from '../post/sent.ts'
import type { Fate } from './keeper.ts'

export type Asked = { id: number; sent: Sent; gauges: KnownGauges }
/** What goes to the thread; null: it is to end once all is kept. To wake another thread takes longer than what it is told. */
export type AskedBundle = Asked[] | null
export type ToldBundle = Told[]
export type Told = { id: number } & ({ fate: Fate } | { error: ToldError })

/** Of an error only its words pass from thread to thread, and no code. */
type ToldError = { name: string; message: string; code?: string | undefined; stack?: string | undefined }

export function toldError(error: unknown): ToldError {
  if (!(error instanceof Error)) return { name: 'Error', message: String(error) }
  const { name, message, stack, code } = error as Error & { code?: string }
  return { name, message, stack, code }
}

export function errorOf({ name, message, ...more }: ToldError): Error {
  if (name === 'UnreadablePost') return new UnreadablePost(message)
  if (name === 'InboxFull') return new InboxFull(message)
  return Object.assign(new Error(message), more)
}
