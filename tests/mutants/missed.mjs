/** A reporter of Stryker's that prints each change that no test noticed as soon as that is known: the whole run takes long. */
import { readFileSync } from 'node:fs'
import { relative } from 'node:path'
import { root } from '../../apps/standalone/build/project.mjs'

class Missed {
  onMutantTested({ status, fileName, location, mutatorName, replacement }) {
    if (status !== 'Survived' && status !== 'NoCoverage') return
    const { start, end } = location
    const lines = readFileSync(fileName, 'utf8')
      .split('\n')
      .slice(start.line - 1, end.line)
    const before = lines[0].slice(0, start.column - 1)
    const after = lines.at(-1).slice(end.column - 1)
    const noted = status === 'NoCoverage' ? ', which no test runs' : ''
    console.log(`\n${relative(root, fileName)}:${start.line}:${start.column} ${mutatorName}${noted}`)
    console.log(lines.map((line) => `-${line}`).join('\n'))
    console.log(`+${before}${replacement}${after}`)
  }
}

export const strykerPlugins = [{ kind: 'Reporter', name: 'missed', injectableClass: Missed }]
