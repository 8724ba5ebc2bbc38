import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { DESKTOP } from '../support/browser.ts'
import { soon, taskLine, taskSentence, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom
let page: Page

const hasFocus = (control: Locator) => control.evaluate((element) => element === document.activeElement)

/** Presses Tab until the control has the focus. */
async function tabTo(control: Locator): Promise<void> {
  await control.waitFor(soon)
  for (let pressed = 0; pressed < 120; pressed += 1) {
    await page.keyboard.press('Tab')
    if (await hasFocus(control)) return
  }
  throw new Error(`Tab never reaches ${control}`)
}

/** As the browser itself tells: now and then a tab beside opens that playwright's own list of pages never hears of. */
async function openPages(): Promise<string[]> {
  const session = await page.context().browser()?.newBrowserCDPSession()
  if (!session) throw new Error('Only a browser of its own can be asked')
  const { targetInfos } = await session.send('Target.getTargets')
  await session.detach()
  return targetInfos.filter(({ type }) => type === 'page').map(({ url }) => url)
}

const sheet = () => page.getByRole('dialog')
const closes = () => sheet().waitFor({ state: 'detached', ...soon })

describe('with the keyboard alone', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
  })
  beforeEach(async () => {
    page = await stage.openPage(room.people.caretaker, { path: room.path('today'), device: DESKTOP })
    await taskLine(page, tasks.turnBottle).waitFor()
    return () => page.context().close()
  })
  afterAll(() => stage.close())

  it('Escape closes a sheet, and the focus is where it was', async () => {
    await tabTo(taskSentence(page, tasks.turnBottle))
    await page.keyboard.press('Enter')
    await sheet().getByRole('region', { name: /^Why/ }).waitFor(soon)
    expect(await sheet().evaluate((element) => element.contains(document.activeElement))).toBe(true)
    await page.keyboard.press('Escape')
    await closes()
    await expect.poll(() => hasFocus(taskSentence(page, tasks.turnBottle)), soon).toBe(true)
  })

  it('the first stop skips the navigation, and a sheet opened after that closes too', async () => {
    await page.keyboard.press('Tab')
    expect(await hasFocus(page.getByRole('link', { name: 'Skip to the page' }))).toBe(true)
    await page.keyboard.press('Enter')
    await page.keyboard.press('Tab')
    expect(await page.evaluate(() => document.querySelector('main')?.contains(document.activeElement))).toBe(true)
    await tabTo(taskSentence(page, tasks.turnBottle))
    await page.keyboard.press('Enter')
    await sheet().waitFor(soon)
    await page.keyboard.press('Escape')
    await closes()
  })

  it('a count is typed and booked', async () => {
    await tabTo(taskSentence(page, tasks.count))
    await page.keyboard.press('Enter')
    await tabTo(sheet().getByLabel('Sample 1'))
    await page.keyboard.type('185')
    await page.keyboard.press('Enter')
    await closes()
    await taskLine(page, tasks.count)
      .getByText(/Counted .*Carla/)
      .waitFor(soon)
  })

  it('arrow keys walk between the rounds', async () => {
    await tabTo(page.getByRole('tab', { selected: true }))
    await page.keyboard.press('ArrowRight')
    await page.getByRole('tab', { name: /^Midday/, selected: true }).waitFor(soon)
    await expect.poll(() => hasFocus(page.getByRole('tab', { name: /^Midday/ })), soon).toBe(true)
    await taskSentence(page, tasks.batteryAir).waitFor(soon)
  })

  it('a link leads on without loading the dashboard anew, and with Control it opens beside', async () => {
    const link = page.getByRole('navigation', { name: 'Room' }).getByRole('link', { name: 'Hand-over' })
    await page.evaluate(() => document.documentElement.setAttribute('data-kept', ''))
    await link.click({ modifiers: ['ControlOrMeta'] })
    await expect.poll(openPages, soon).toContain(`${stage.origin}${room.path('hand-over')}`)
    expect(page.url()).toMatch(/\/today$/)
    await tabTo(link)
    await page.keyboard.press('Enter')
    await page.waitForURL(/\/hand-over$/, soon)
    expect(await page.locator('html[data-kept]').count()).toBe(1)
  })
})
