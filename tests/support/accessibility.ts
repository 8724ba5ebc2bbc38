import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { Page } from 'playwright-core'
import type { Look } from './stage.ts'

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

// WCAG 2.2 A and AA includes everything of 2.0 and 2.1.
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

// What a look can change: its hues. Names, roles, order and sizes are the same in all of them.
const HUE_RULES = ['color-contrast', 'link-in-text-block']

const otherLooks: Look[] = ['night', 'lights_out']

/**
 * What axe finds wrong with the page as it stands, in every look: one line for each element, empty when it is clean. The
 * page is left in the look of the day.
 */
export async function findAccessibilityViolations(page: Page): Promise<string[]> {
  // Evaluated, not added as a script element: the page's own content policy would refuse that.
  // Half a megabyte takes longer to send than a page to be looked at.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axeSource)
  await changeLook(page, 'day')
  const found = await runAxe(page, { type: 'tag', values: TAGS })
  for (const look of otherLooks) {
    await changeLook(page, look)
    const inLook = await runAxe(page, { type: 'rule', values: HUE_RULES })
    found.push(...inLook.map((violation) => `${look}: ${violation}`))
  }
  await changeLook(page, 'day')
  return found
}

/** As another tab of the same browser changes it, without loading the page anew. */
async function changeLook(page: Page, look: Look): Promise<void> {
  await page.evaluate((value) => {
    window.localStorage.setItem('fryward-look', value)
    window.dispatchEvent(new Event('storage'))
  }, look)
}

async function runAxe(page: Page, runOnly: { type: 'tag' | 'rule'; values: string[] }): Promise<string[]> {
  const results = await page.evaluate<AxeResults, typeof runOnly>(
    // What is in order is not told of, element by element: on long pages that took longer than the looking.
    (only) => window.axe.run(document, { runOnly: only, resultTypes: ['violations'] }),
    runOnly,
  )
  return results.violations.flatMap((violation) =>
    violation.nodes.map(
      (node) =>
        `${violation.id} (${violation.impact}): ${node.target.join(' ')}: ${node.failureSummary ?? violation.help}`,
    ),
  )
}

declare global {
  interface Window {
    axe: { run(context: Document, options: object): Promise<AxeResults> }
  }
}
