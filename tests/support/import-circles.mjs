// Who imports whom, and where that goes round in a circle. Plain JavaScript: `npm run verify` runs it before anything is built.
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, posix } from 'node:path'
import { root } from '../../apps/standalone/build/project.mjs'

/** Every room of the house that is free of circles; `@/` is the dashboard's own alias for its src. */
const ROOMS = [
  'shared/src',
  'packages/seawater/src',
  'packages/live-feed/src',
  'packages/planner/src',
  'packages/survival/src',
  'packages/lineage/src',
  'packages/words/src',
  'packages/husbandry/src',
  'packages/store/src',
  'packages/readings/src',
  'packages/room/src',
  'apps/api/src',
  'apps/scheduler/src',
  'apps/web/src',
  'apps/standalone/src',
]

const isSource = (path) => /\.tsx?$/.test(path) && !/\.test\.tsx?$|(^|\/)(generated|testing)\//.test(path)
/** Formatted code only: one kind of quotes, and `from` on the line of its path. */
const importPattern = /(?:\bfrom|\bimport)\s*\(?\s*'((?:@\/|\.)[^']+)'/g

/** Each source file of a folder, and those of its files that it imports; types count, for they tie files together too. */
export function readImports(folder) {
  const files = readdirSync(folder, { recursive: true }).map(toPosix).filter(isSource)
  const known = new Set(files)
  return new Map(
    files.map((file) => {
      const text = readFileSync(join(folder, file), 'utf8')
      const named = [...text.matchAll(importPattern)].map(([, path]) =>
        path.startsWith('@/') ? path.slice(2) : posix.join(posix.dirname(file), path),
      )
      return [file, new Set(named.filter((path) => known.has(path)))]
    }),
  )
}

const toPosix = (path) => path.replaceAll('\\', '/')

/** A file at the root of a room is a floor of its own: a door above all the folders, or a word that all of them share. */
const folderOf = (file) => (dirname(file) === '.' ? file : dirname(file))

/** The same between folders. */
export function toFolders(imports) {
  const folders = new Map()
  for (const [file, imported] of imports) {
    const from = folderOf(file)
    const to = folders.get(from) ?? new Set()
    for (const one of imported) if (folderOf(one) !== from) to.add(folderOf(one))
    folders.set(from, to)
  }
  return folders
}

/** What can be reached from itself, each circle once, in the order it is walked. */
export function findCircles(graph) {
  const circles = []
  const isDone = new Set()
  const walk = (node, path) => {
    const at = path.indexOf(node)
    if (at >= 0) return void circles.push(path.slice(at))
    if (isDone.has(node)) return
    for (const next of graph.get(node) ?? []) walk(next, [...path, node])
    isDone.add(node)
  }
  for (const node of graph.keys()) walk(node, [])
  return circles
}

/** A sentence for each circle in a room of the house. */
export function findCirclesIn(room, folder = join(root, room)) {
  const files = readImports(folder)
  const say = (kind) => (circle) => `${room}: ${kind} in a circle: ${[...circle, circle[0]].join(' -> ')}`
  return [...findCircles(files).map(say('files')), ...findCircles(toFolders(files)).map(say('folders'))]
}

export const findAllCircles = () => ROOMS.flatMap((room) => findCirclesIn(room))
