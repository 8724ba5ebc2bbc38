import { readdirSync, readFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { describe, expect, it } from 'vitest'

const dashboard = new URL('../../apps/web/src', import.meta.url).pathname

/** What cuts text apart or looks for words in it. What is shown comes in parts from packages/words, and is not read back. */
const cuts =
  /new RegExp|\.startsWith\(|\.endsWith\(|\.replace(All)?\(\s*\/|\.replaceAll\(|\.match(All)?\(|\.split\(\s*\//

/** Where text is cut that nobody reads, or that a person typed; each with its reason. */
const allowed: Record<string, string> = {
  'base/api/query-client.ts': 'addresses of pages that need no session',
  'base/outbox/drafts.ts': 'places of drafts',
  'parts/history/use-fact-target.ts': 'the part of an address behind #',
  'parts/shell/RoomNav.tsx': 'addresses of pages',
  'parts/task-sheet/use-sign-off-answers.ts': 'paths of fields in an answer',
  'screens/devices/BrokerForm.tsx': 'the address of a broker that a person typed',
  'screens/devices/find-devices.ts': 'words that a person typed to search',
  'screens/rules/find-rules.ts': 'words that a person typed to search',
  'screens/sign-in/safe-path.ts': 'the address to go on to',
}

/** What nobody in a breeding room says, or what only a program says; and the trade's word for it. */
const notOurs: [RegExp, string][] = [
  [/in the same standing/i, 'at the same time'],
  [/\banew\b/i, 'again'],
  [/grown ones/i, 'adults'],
  [/\blet(s|ting)? go\b/i, 'release'],
  [/first nauplii/i, 'newly hatched nauplii'],
  [/\bair low\b/i, 'turn the air down'],
  [/worth a word/i, 'say so'],
  [/\bneeds one\b/i, 'what it needs'],
  [/\} it is\b|\d it is\b/, 'a number that is typed'],
  [/a round was done/i, 'who did what'],
  [/young of larvae/i, 'juveniles'],
  [/invalid (uuid|input)|expected (int|string|number|boolean)\b/i, 'what to give instead'],
]
const house = new URL('../../', import.meta.url).pathname
const speaking = [
  'shared',
  'packages/words',
  'packages/husbandry',
  'packages/room',
  'packages/notify',
  'apps/web',
  'apps/api',
]
/** A source without its comments, which nobody is shown. */
const said = (source: string) => source.replaceAll(/\/\*[\s\S]*?\*\//g, '').replaceAll(/(^|\s)\/\/.*$/gm, '')
const sourcesOf = (room: string) =>
  readdirSync(join(house, room, 'src'), { recursive: true, encoding: 'utf8' })
    .filter((path) => /\.tsx?$/.test(path) && !/\.test\.tsx?$|(^|\/)(testing|generated)\//.test(path))
    .map((path) => join(room, 'src', path))

const files = readdirSync(dashboard, { recursive: true, encoding: 'utf8' })
  .filter((path) => /\.tsx?$/.test(path) && !/\.test\.tsx?$|^testing\//.test(path))
  .map((path) => relative(dashboard, join(dashboard, path)))
const cutting = files.filter((path) => cuts.test(readFileSync(join(dashboard, path), 'utf8')))

describe('text that the dashboard shows', () => {
  it('is cut apart nowhere but where it is an address, a path or a search', () => {
    expect(files.length).toBeGreaterThan(150)
    expect(cutting.filter((path) => allowed[path] === undefined)).toEqual([])
  })

  it('has no leave to be cut that nothing uses', () => {
    expect(Object.keys(allowed).filter((path) => !cutting.includes(path))).toEqual([])
  })
})

describe('words that a person reads', () => {
  const sources = speaking.flatMap(sourcesOf)

  it('are the trade’s own', () => {
    expect(sources.length).toBeGreaterThan(700)
    const found = sources.flatMap((path) => {
      const text = said(readFileSync(join(house, path), 'utf8'))
      return notOurs.filter(([word]) => word.test(text)).map(([word, instead]) => `${path}: ${word}, say "${instead}"`)
    })
    expect(found).toEqual([])
  })

  it('are looked for: a sentence that has one is found, a comment is not', () => {
    const words = (text: string) => notOurs.filter(([word]) => word.test(said(text))).length
    expect(words("phrase('Refill it in the same standing.')")).toBe(1)
    expect(words("'40000 it is'")).toBe(1)
    expect(words('// in the same standing\n/** grown ones */')).toBe(0)
  })
})
