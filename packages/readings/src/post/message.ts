import { numberOf } from './csv.ts'
import { createReader } from './fate.ts'
import { readPlain } from './plain.ts'
import { type Arrival, type Post, UnreadablePost } from './posted.ts'
import { readSenml } from './senml.ts'

// As much of it as helps whoever built the device.
const shownLetters = 40

/**
 * What a message of a broker says: a number alone, of the gauge that its topic names, or the JSON of a post, which says
 * itself whether it is SenML.
 * @throws UnreadablePost when it is neither.
 */
export function readMessage({ text, ...arrival }: Arrival & { text: string }): Post {
  const said = text.trim()
  const alone = numberOf(said)
  if (!Number.isNaN(alone)) return readNumber(alone, arrival)
  const body = jsonOf(said)
  return isSenml(body) ? readSenml(body, arrival) : readPlain(body, arrival)
}

function readNumber(value: number, arrival: Arrival): Post {
  const { gauge } = arrival
  if (gauge === undefined)
    throw new UnreadablePost('A number alone goes to the topic of its device, a slash and the name of the gauge.')
  const reader = createReader(arrival)
  reader.take({ index: 0, gauge, at: null, value, unit: null })
  return reader.post
}

function jsonOf(said: string): unknown {
  try {
    return JSON.parse(said)
  } catch {
    const shown = said.slice(0, shownLetters).replaceAll(/\p{C}|\uFFFD/gu, '?')
    throw new UnreadablePost(said === '' ? 'The message is empty.' : `"${shown}" is neither a number nor JSON.`)
  }
}

// Section 4.2 of RFC 8428: a list of records with at least one of these. Our own readings have none of them.
const isSenml = (body: unknown): boolean =>
  Array.isArray(body) &&
  body.some(
    (each) => typeof each === 'object' && each !== null && ['n', 'bn', 'v', 'bt', 'bver'].some((name) => name in each),
  )
