/**
 * A plugin of Stryker's that leaves out what a sample does not hold: for every outermost function or constant of a file its
 * own hash of seed, file and name decides, so that the choice rests on no order and stays when other code is written.
 */
import { createHash } from 'node:crypto'
import { relative } from 'node:path'
import { root } from '../../apps/standalone/build/project.mjs'

const choice = { oneIn: 1, seed: '1' }

export const choose = (given) => Object.assign(choice, given)

/** Every function and constant that is changed: its file and where it begins. */
export const chosen = []

function shouldIgnore(path) {
  const name = outermostName(path)
  if (name === undefined) return undefined
  const file = relative(root, path.hub.file.opts.filename).replaceAll('\\', '/')
  if (!isChosen(`${file} ${name}`)) return 'It is not in the sample.'
  chosen.push({ file, line: path.node.loc.start.line })
  return undefined
}

/** Whether the hash of a name falls into the first of so many equal parts. */
function isChosen(name) {
  const hash = createHash('sha256').update(`${choice.seed} ${name}`).digest()
  return hash.readUInt32BE(0) / 2 ** 32 < 1 / choice.oneIn
}

/** The name of what a file itself declares; a statement that has none goes by its kind. */
function outermostName({ node, parentPath }) {
  const isExported = parentPath?.isExportDeclaration()
  const isOfFile = (isExported ? parentPath.parentPath : parentPath)?.isProgram()
  if (!isOfFile || node.type.startsWith('Export')) return undefined
  if (node.type === 'VariableDeclaration') return node.declarations.map(({ id }) => id.name ?? id.type).join(' ')
  return node.id?.name ?? node.type
}

export const strykerPlugins = [{ kind: 'Ignore', name: 'sample', value: { shouldIgnore } }]
