import { readMessage } from './message.ts'
import type { Arrival, Post } from './posted.ts'
import { readPost } from './read-post.ts'

/** What a device sent, as it came: the body of a post with its media type, or a message of a broker, which names none. */
export type Sent = Arrival & { bytes: Uint8Array; type: string | null }

/** @throws UnreadablePost when it is no post at all. */
export function readSent({ bytes, type, ...arrival }: Sent): Post {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('utf8')
  return type === null ? readMessage({ text, ...arrival }) : readPost({ type, body: text, nowMs: arrival.nowMs })
}
