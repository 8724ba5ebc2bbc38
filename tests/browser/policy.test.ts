import { afterAll, beforeAll, expect, it } from 'vitest'
import { watchRequests } from '../support/browser-quiet.mjs'
import { soon } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom

beforeAll(async () => {
  stage = await openStage()
  room = await openLivedInRoom(stage)
})
afterAll(() => stage.close())

// That no page needs what its policy forbids is looked at in every browser test (support/stage.ts), page by page in those of
// accessibility.
it('scripts and styles that slip into a page are neither run nor worn', async () => {
  const page = await stage.openPage(room.people.owner, { path: '/rooms/new' })
  const quiet = watchRequests(page)
  for (const path of [room.path('today'), room.path('settings'), '/claim', '/rooms/new']) {
    const answer = await page.goto(`${stage.origin}${path}`)
    const policy = answer?.headers()['content-security-policy'] ?? ''
    expect(policy, path).toMatch(
      /script-src 'self' 'sha256-[^;]*; script-src-attr 'none'; style-src 'self'; style-src-attr/,
    )
    expect(policy, path).not.toMatch(/unsafe-(?!hashes)/)
    await page.getByRole('heading', { level: 1 }).waitFor(soon)
    await quiet()
  }
  expect(stage.refused).toEqual([])
  const slippedIn = await page.evaluate(() => {
    const script = document.createElement('script')
    script.textContent = 'window.slippedIn = true'
    const style = document.createElement('style')
    style.textContent = 'h1 { opacity: 0.1 }'
    document.body.append(script, style)
    document.body.insertAdjacentHTML('beforeend', '<img src="/no-such-picture" onerror="window.slippedIn = true">')
    document.body.insertAdjacentHTML('beforeend', '<p id="slipped-in" style="opacity: 0.1">')
    return ['h1', '#slipped-in'].map((place) => getComputedStyle(document.querySelector(place) as Element).opacity)
  })
  expect(slippedIn).toEqual(['1', '1'])
  await quiet()
  expect(await page.evaluate(() => 'slippedIn' in window)).toBe(false)
  const forbiddenBy = stage.refused.splice(0).map((told) => / directive '([a-z-]+)/.exec(told)?.[1])
  expect(new Set(forbiddenBy)).toEqual(new Set(['script-src', 'script-src-attr', 'style-src', 'style-src-attr']))
  await page.context().close()
})
