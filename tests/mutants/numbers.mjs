/**
 * Stryker changes no number, and a dose or a threshold is one. Here each becomes a fifth larger, a whole one by one at least,
 * and nought one. It has no door for kinds of one's own: ours is put into the list of its own, which a new version may move.
 */
import { createRequire } from 'node:module'
import { fileURLToPath, pathToFileURL } from 'node:url'

const larger = (value) =>
  Number.isInteger(value) ? value + Math.max(1, Math.round(value / 5)) : Number((value * 1.2).toPrecision(12))

const numbers = {
  name: 'Number',
  *mutate(path) {
    const isName = path.parentPath?.isObjectProperty({ key: path.node }) && !path.parent.computed
    if (path.isNumericLiteral() && !isName) yield { type: 'NumericLiteral', value: larger(path.node.value) }
  },
}

export async function alsoChangeNumbers() {
  const core = fileURLToPath(import.meta.resolve('@stryker-mutator/core'))
  const instrumenter = pathToFileURL(createRequire(core).resolve('@stryker-mutator/instrumenter'))
  const { allMutators } = await import(new URL('mutators/mutate.js', instrumenter))
  allMutators.push(numbers)
}
