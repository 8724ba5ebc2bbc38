import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { Page } from 'playwright-core'

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

// WCAG 2.2 A and AA includes everything of 2.0 and 2.1.
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

/** What axe finds wrong with the page as it stands: one line for each element, empty when it is clean. */
export async function findAccessibilityViolations(page: Page): Promise<string[]> {
  // Evaluated, not added as a script element: the page's own content policy would refuse that.
  await page.evaluate(axeSource)
  const results = await page.evaluate<AxeResults, string[]>(
    (values) => window.axe.run(document, { runOnly: { type: 'tag', values } }),
    TAGS,
  )
  return results.violations.flatMap((violation) =>
    violation.nodes.map((node) => `${violation.id} (${violation.impact}): ${node.target.join(' ')}: ${violation.help}`),
  )
}

declare global {
  interface Window {
    axe: { run(context: Document, options: object): Promise<AxeResults> }
  }
}
