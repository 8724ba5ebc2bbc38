// Keeps finished histories of the demo room, so that it need not be lived through again: a backup in the project's own
// form with the state of the waters beside it, in a folder named by all that decides what is in them. No account in a
// history can sign in, so there is nothing to steal.
import { createHash, randomBytes } from 'node:crypto'
import {
  createWriteStream,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { restoreBackup, writeBackup } from '@fryward/store'

const root = join(dirname(fileURLToPath(import.meta.url)), '../..')
/** Where histories are kept unless told otherwise: git ignores it, and a new installation of the packages clears it. */
export const usualFolder = join(root, 'node_modules/.cache/fryward/demo-room')
const mostKept = 8
const unfinished = 'unfinished-'
const unfinishedForMs = 3_600_000

// What `npm start` compiles and a history is lived through with; a part that no program uses is not there.
export const livedThroughWith = [
  'shared',
  'seawater',
  'live-feed',
  'survival',
  'lineage',
  'planner',
  'husbandry',
  'store',
  'readings',
  'notify',
  'room',
  'words',
]

/** A hash of all that decides what a history holds: the code as it runs, the schema, the date and the zone. */
export function historyKey({ today, timeZone }) {
  const hash = createHash('sha256')
  const { node, icu, tz } = process.versions
  hash.update(JSON.stringify([today, timeZone, node, icu, tz, process.arch]))
  const code = livedThroughWith.map((name) => dirname(fileURLToPath(import.meta.resolve(`@fryward/${name}`))))
  const isCode = (name) => /\.(m?[jt]s|sql)$/.test(name) && !/\.(d|test)\.m?ts$/.test(name)
  for (const place of [...code, join(root, 'prisma/demo'), join(root, 'prisma/migrations')])
    for (const name of readdirSync(place, { recursive: true }).filter(isCode).sort()) {
      hash.update(name)
      hash.update(readFileSync(join(place, name)))
    }
  hash.update(readFileSync(join(root, 'package-lock.json')))
  return hash.digest('hex').slice(0, 32)
}

/** Fills the empty database from a kept history; null when there is none, or none that can be read. */
export async function restoreHistory({ folder, key, connectionString }) {
  const entry = join(folder, key)
  if (!existsSync(entry)) return null
  let state
  try {
    state = JSON.parse(readFileSync(stateFile(entry), 'utf8'))
    await restoreBackup({ connectionString, file: backupFile(entry) })
  } catch (cause) {
    // Rows come in one transaction, so the database is still empty and the history can be built.
    process.stderr.write(`The kept history of the demo room cannot be used (${cause.message}); building it again\n`)
    unlessReadOnly(() => rmSync(entry, { recursive: true, force: true }))
    return null
  }
  unlessReadOnly(() => utimesSync(entry, new Date(), new Date()))
  process.stderr.write('Its history until today was kept from an earlier time\n')
  return state
}

/** Keeps the database's history for the next time. A folder that cannot be written is said and does no harm. */
export async function keepHistory({ folder, key, connectionString, state }) {
  const beside = join(folder, `${unfinished}${randomBytes(6).toString('hex')}`)
  try {
    mkdirSync(beside, { recursive: true, mode: 0o700 })
    const output = createWriteStream(backupFile(beside), { mode: 0o600 })
    await writeBackup({ connectionString, output, now: new Date().toISOString() })
    writeFileSync(stateFile(beside), JSON.stringify(state))
    place(beside, join(folder, key))
    prune(folder)
  } catch (cause) {
    process.stderr.write(`\nThe history of the demo room cannot be kept for next time: ${cause.message}`)
  } finally {
    if (existsSync(beside)) rmSync(beside, { recursive: true, force: true })
  }
}

/** Whole or not at all; where two build at once, the first to end is kept. */
function place(beside, entry) {
  try {
    renameSync(beside, entry)
  } catch (cause) {
    if (cause.code !== 'ENOTEMPTY' && cause.code !== 'EEXIST') throw cause
  }
}

const backupFile = (entry) => join(entry, 'history.tar.gz')
const stateFile = (entry) => join(entry, 'waters.json')

/** Those used last stay, whatever their date: zones and versions take turns. What a killed build left goes too. */
function prune(folder) {
  // One that another build has just moved or removed has no time any more, and is left to it.
  const timeOf = (name) => statSync(join(folder, name), { throwIfNoEntry: false })?.mtimeMs ?? Date.now()
  const entries = readdirSync(folder).map((name) => ({ name, usedMs: timeOf(name) }))
  const isLeft = ({ name, usedMs }) => name.startsWith(unfinished) && usedMs < Date.now() - unfinishedForMs
  const kept = entries.filter(({ name }) => !name.startsWith(unfinished)).sort((a, b) => b.usedMs - a.usedMs)
  for (const { name } of [...entries.filter(isLeft), ...kept.slice(mostKept)])
    rmSync(join(folder, name), { recursive: true, force: true })
}

function unlessReadOnly(change) {
  try {
    change()
  } catch (cause) {
    if (cause.code !== 'EACCES' && cause.code !== 'EPERM' && cause.code !== 'EROFS') throw cause
  }
}
