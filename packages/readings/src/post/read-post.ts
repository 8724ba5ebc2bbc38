import { readCsv } from './csv.ts'
import { readPlain } from './plain.ts'
import { type Post, UnreadablePost } from './posted.ts'
import { readSenml } from './senml.ts'

/**
 * What a body of a device says, in the format that its media type names.
 * @throws UnreadablePost when the body as a whole is none; single readings that are none are in `refused`.
 */
export function readPost({ type, body, nowMs }: { type: string; body: string; nowMs: number }): Post {
  if (type === 'text/csv') return readCsv(body, nowMs)
  const value = jsonOf(body)
  return type === 'application/senml+json' ? readSenml(value, { nowMs }) : readPlain(value, { nowMs })
}

function jsonOf(body: string): unknown {
  try {
    return JSON.parse(body)
  } catch {
    throw new UnreadablePost('The body is not JSON.')
  }
}
