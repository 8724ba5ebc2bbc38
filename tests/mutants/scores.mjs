/** What became of the changes, by package, and how sure that is where only a part of the functions was changed. */
import { relative } from 'node:path'
import { root } from '../../apps/standalone/build/project.mjs'

/** 95 %, two-sided */
const Z = 1.96
// What does not load any more is an error of the run.
const NOTICED = ['Killed', 'Timeout', 'RuntimeError']
const MISSED = ['Survived', 'NoCoverage']

/** One line a package and one for each kind of change in it; `chosen` says where the functions that were changed begin. */
export function printScores(mutants, chosen, partOf) {
  const tried = mutants
    .filter(({ status }) => [...NOTICED, ...MISSED].includes(status))
    .map((mutant) => ({ ...mutant, file: relative(root, mutant.fileName).replaceAll('\\', '/') }))
  for (const [part, those] of grouped(tried, ({ file }) => partOf(file))) {
    const functions = grouped(those, (mutant) => functionOf(mutant, chosen))
    console.log(`\n${part}: ${scoreLine(those, [...functions.values()])}`)
    for (const [kind, ofKind] of grouped(those, ({ mutatorName }) => mutatorName))
      console.log(`  ${kind}: ${share(ofKind)}`)
  }
}

function scoreLine(mutants, functions) {
  const { lower, upper } = intervalOf(mutants, functions)
  const unrun = mutants.filter(({ status }) => status === 'NoCoverage').length
  return `${share(mutants)}, 95 % interval ${percent(lower)} to ${percent(upper)}; in ${functions.length} functions and constants; ${unrun} that no test runs`
}

const percent = (number) => `${(100 * number).toFixed(1)} %`
const share = (mutants) =>
  `${percent(noticedOf(mutants) / mutants.length)} noticed (${noticedOf(mutants)} of ${mutants.length})`
const noticedOf = (mutants) => mutants.filter(({ status }) => NOTICED.includes(status)).length

/**
 * Changes of one function are alike, so a sample of functions is worth fewer changes than it holds: by the variance of a ratio
 * of clusters over that of a plain share (Kish 1965, Survey Sampling, 6.3 and 8.2), at least 1.
 */
function intervalOf(mutants, functions) {
  const tried = mutants.length
  const p = noticedOf(mutants) / tried
  const spread = functions.reduce((sum, each) => sum + (noticedOf(each) - p * each.length) ** 2, 0)
  const ratio = functions.length < 2 ? 0 : (functions.length / (functions.length - 1)) * (spread / tried ** 2)
  const plain = (p * (1 - p)) / tried
  return wilson(p, tried / (plain === 0 ? 1 : Math.max(1, ratio / plain)))
}

/** Wilson 1927, J. Am. Stat. Assoc. 22:209-212 */
function wilson(p, of) {
  const centre = (p + Z ** 2 / (2 * of)) / (1 + Z ** 2 / of)
  const half = (Z / (1 + Z ** 2 / of)) * Math.sqrt((p * (1 - p)) / of + (Z / (2 * of)) ** 2)
  return { lower: Math.max(0, centre - half), upper: Math.min(1, centre + half) }
}

function functionOf({ file, location }, chosen) {
  const lines = chosen.filter((each) => each.file === file && each.line <= location.start.line).map(({ line }) => line)
  return `${file}:${Math.max(...lines)}`
}

function grouped(list, keyOf) {
  const groups = new Map()
  for (const each of list) groups.set(keyOf(each), [...(groups.get(keyOf(each)) ?? []), each])
  return groups
}
