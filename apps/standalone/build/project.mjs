// Plain JavaScript, no packages: this runs before anything is installed.
import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'

export const root = join(dirname(fileURLToPath(import.meta.url)), '../../..')

/** A step that failed; its own words are on the terminal already. */
export class StepFailed extends Error {}

/** A sentence when this Node is too old to go on, else undefined. */
export function findNodeProblem(version = process.versions.node) {
  const [major, minor] = version.split('.').map(Number)
  if (major > 20 || (major === 20 && minor >= 19)) return undefined
  return `Fryward needs Node 20.19 or later (24 is best); this is ${version}. Install a newer one from nodejs.org and start again.`
}

// Stands while packages are being installed: npm writes its own account of node_modules early, so after a kill halfway
// that account alone would pass for a finished install.
const installingMark = '.fryward-installing'

/** Whether node_modules holds what the lockfile says, package by package, and no install was broken off. */
export function isInstalled(folder = root) {
  if (existsSync(join(folder, installingMark))) return false
  const installedFile = join(folder, 'node_modules/.package-lock.json')
  if (!existsSync(installedFile)) return false
  const wanted = JSON.parse(readFileSync(join(folder, 'package-lock.json'), 'utf8')).packages
  const installed = JSON.parse(readFileSync(installedFile, 'utf8')).packages
  return Object.entries(wanted).every(([path, entry]) => {
    if (path === '' || !path.includes('node_modules/') || entry.link) return true
    const found = installed[path]
    return found === undefined ? entry.optional === true || entry.peer === true : found.version === entry.version
  })
}

/** Installs from the lockfile when that is needed. */
export async function ensureInstalled(log = console.log) {
  if (isInstalled()) return
  log('Installing packages from the lockfile (the first time takes a minute or two)')
  const list = ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error']
  writeFileSync(join(root, installingMark), 'An install was begun here; the next start does it again.\n')
  await runStep('npm ci', npmCommand(list))
  rmSync(join(root, installingMark))
}

/** npm of the running installation, however it was started. */
export function npmCommand(list) {
  const npm = process.env.npm_execpath
  if (npm?.endsWith('.js')) return { program: process.execPath, list: [npm, ...list] }
  return process.platform === 'win32' ? { program: 'npm.cmd', list, shell: true } : { program: 'npm', list }
}

/** Runs a program in this terminal to its end; throws StepFailed. */
export function runStep(name, { program, list, shell = false, environment = {} }) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, list, { cwd: root, stdio: 'inherit', shell, env: { ...process.env, ...environment } })
    const pass = (signal) => child.kill(signal)
    process.on('SIGTERM', pass)
    process.on('SIGINT', pass)
    child.on('error', (error) => reject(new StepFailed(`${name} could not be run: ${error.message}`)))
    child.on('exit', (code, signal) => {
      process.off('SIGTERM', pass)
      process.off('SIGINT', pass)
      if (code === 0) resolve()
      else reject(new StepFailed(`${name} failed (${code ?? signal}); its own words are above.`))
    })
  })
}

const IGNORED = new Set(['node_modules', 'dist', 'packed', '.next', 'generated', '.DS_Store', 'next-env.d.ts'])

/** One number for the content of files and folders, whatever their dates: a checkout or a copy builds nothing anew. */
export function hashOf(paths) {
  const hash = createHash('sha256')
  const visit = (path) => {
    const entries = readdirSync(path, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1))
    for (const entry of entries) {
      if (IGNORED.has(entry.name) || /\.test\.tsx?$/.test(entry.name)) continue
      if (entry.isDirectory()) visit(join(path, entry.name))
      else add(join(path, entry.name))
    }
  }
  const add = (file) =>
    hash
      .update(`${relative(root, file)}\0`)
      .update(readFileSync(file))
      .update('\0')
  for (const path of paths.map((name) => join(root, name))) {
    if (!existsSync(path)) continue
    const isFolder = !/\.[a-z]+$/.test(path)
    if (isFolder) visit(path)
    else add(path)
  }
  return hash.digest('hex')
}

/** Does the step unless its outputs exist and were made from these very inputs. */
export async function ensureBuilt({ name, inputs, outputs, build }) {
  const stamp = join(root, 'node_modules/.cache/fryward', name)
  const hash = hashOf(inputs)
  const isCurrent = existsSync(stamp) && readFileSync(stamp, 'utf8') === hash
  if (isCurrent && outputs.every((path) => existsSync(join(root, path)))) return false
  await build()
  mkdirSync(dirname(stamp), { recursive: true })
  writeFileSync(stamp, hash)
  return true
}
