import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { root } from '../../apps/standalone/build/project.mjs'

const DOCUMENTS = ['README.md', 'DEVELOPERS.md', 'apps/api/SECURITY.md']
// Made by starting or building: named in the documents, absent from a fresh clone.
const MADE_LATER = /^(\.data|\.env$|node_modules)|(^|\/)(dist|\.next|generated|\.output)(\/|$)/

/** Sentences about paths that a document names in backticks and that do not exist. */
export function findMissingPaths(folder = root) {
  const topLevel = new Set(readdirSync(folder))
  const missing = []
  for (const document of DOCUMENTS.filter((name) => existsSync(join(folder, name)))) {
    const lines = readFileSync(join(folder, document), 'utf8').split('\n')
    for (const [index, line] of lines.entries()) {
      for (const [, quoted] of line.matchAll(/`([^`]+)`/g)) {
        if (looksLikePath(quoted, topLevel) && !existsSync(join(folder, quoted))) {
          missing.push(`${document}:${index + 1} names ${quoted}, which does not exist`)
        }
      }
    }
  }
  return missing
}

/** A path of ours starts with a folder or file at the root; a placeholder or a glob is none. */
function looksLikePath(text, topLevel) {
  if (/[\s<>*{}$:…]/.test(text) || MADE_LATER.test(text)) return false
  const first = text.split('/')[0] ?? ''
  const isNested = text.includes('/') && (topLevel.has(first) || /^(apps|packages|prisma|shared|tests)$/.test(first))
  const isRootFile = !text.includes('/') && /^[A-Za-z.-]+\.(md|json|mjs|ts|yml|yaml)$/.test(text) && topLevel.has(text)
  return isNested || isRootFile
}
