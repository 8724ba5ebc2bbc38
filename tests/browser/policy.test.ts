import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { watchRequests } from '../support/browser-quiet.mjs'
import { openSheet, soon, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom

beforeAll(async () => {
  stage = await openStage()
  room = await openLivedInRoom(stage)
})
afterAll(() => stage.close())

/** What the browser kept a page from, as it says it itself. */
async function watchViolations(page: Page): Promise<() => Promise<string[]>> {
  await page.addInitScript(() => {
    const kept: string[] = []
    Object.assign(window, { kept })
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI, sample, sourceFile }) =>
      kept.push(`${effectiveDirective} ${blockedURI} ${sample} ${sourceFile}`),
    )
  })
  return () => page.evaluate(() => (window as unknown as { kept: string[] }).kept)
}

it('no page needs what its policy forbids, and a script that slips into one is not run', async () => {
  const page = await stage.openPage(room.people.owner, { path: room.path('today') })
  const violations = await watchViolations(page)
  const quiet = watchRequests(page)
  const paths = ['today', `cultures/${room.culture.id}`, 'rules', 'account', 'settings', 'add', 'hand-over']
  for (const path of [...paths.map((each) => room.path(each)), '/sign-in', '/claim']) {
    const answer = await page.goto(`${stage.origin}${path}`)
    const policy = answer?.headers()['content-security-policy'] ?? ''
    expect(policy, path).toMatch(/script-src 'self' 'sha256-/)
    expect(policy.split("style-src 'self' 'unsafe-inline'").join(''), path).not.toContain('unsafe')
    await page.getByRole('heading', { level: 1 }).waitFor(soon)
    await quiet()
    expect(await violations(), path).toEqual([])
  }
  await page.goto(`${stage.origin}${room.path('today')}`)
  await openSheet(page, tasks.feed)
  await quiet()
  expect(await violations()).toEqual([])
  await page.evaluate(() => {
    const script = document.createElement('script')
    script.textContent = 'window.slippedIn = true'
    document.body.append(script)
    document.body.insertAdjacentHTML('beforeend', '<img src="/no-such-picture" onerror="window.slippedIn = true">')
  })
  await quiet()
  expect(await page.evaluate(() => 'slippedIn' in window)).toBe(false)
  expect((await violations()).length).toBeGreaterThan(0)
  await page.context().close()
})
