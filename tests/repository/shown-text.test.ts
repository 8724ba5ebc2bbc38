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
  'screens/rules/find-rules.ts': 'words that a person typed to search',
  'screens/sign-in/safe-path.ts': 'the address to go on to',
}

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
