import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { readImports } from '../support/import-circles.mjs'
import { root } from '../support/project-root.ts'

const dashboard = join(root, 'apps/web/src')
const controls = 'base/ui/Controls.tsx'
const imports: Map<string, Set<string>> = readImports(dashboard)
const importsOf = (file: string) => imports.get(file) ?? new Set<string>()

/** Inputs of Mantine break the page where its provider stands nowhere above them. */
const takesInputs = (file: string) =>
  !file.startsWith('base/look/') && /from '@mantine\/core'/.test(readFileSync(join(dashboard, file), 'utf8'))

/** From a file to inputs that nothing on the way gives their provider to; undefined where there is no such way. */
function wayToInputs(file: string, seen = new Set<string>()): string[] | undefined {
  if (seen.has(file) || importsOf(file).has(controls)) return undefined
  seen.add(file)
  if (takesInputs(file)) return [file]
  for (const next of importsOf(file)) {
    const way = wayToInputs(next, seen)
    if (way) return [file, ...way]
  }
  return undefined
}

/** Whether a layout above a file of a route gives inputs what they need. */
function hasControlsAbove(file: string): boolean {
  const folder = dirname(file)
  if (folder === '.') return false
  const layout = `${folder}/layout.tsx`
  return (layout !== file && importsOf(layout).has(controls)) || hasControlsAbove(folder)
}

const routes = [...imports.keys()].filter((file) => file.startsWith('app/'))

describe('a page with inputs', () => {
  it('has the provider of inputs above it: in a layout, or in the part that brings them', () => {
    expect(routes.length).toBeGreaterThan(50)
    const broken = routes
      .filter((file) => !hasControlsAbove(file))
      .flatMap((file) => wayToInputs(file)?.join(' -> ') ?? [])
    expect(broken).toEqual([])
  })

  it('is found, through what it shows and what it loads later', () => {
    expect(wayToInputs('app/rooms/[roomId]/devices/page.tsx')?.at(-1)).toMatch(/^screens\/devices\//)
    expect(wayToInputs('parts/recording/RecordMenu.tsx')).toBeDefined()
    expect(wayToInputs('parts/task-sheet/TaskSheetPlace.tsx')).toBeUndefined()
  })
})
