import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { DESKTOP } from '../support/browser.ts'
import { soon, taskLine, taskSentence, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom
let page: Page

const hasFocus = (name: RegExp) =>
  page.evaluate((source) => {
    const { activeElement } = document
    return new RegExp(source, 'i').test(activeElement?.getAttribute('aria-label') ?? activeElement?.textContent ?? '')
  }, name.source)

/** Presses Tab until the control with that name has the focus. */
async function tabTo(name: RegExp): Promise<void> {
  for (let pressed = 0; pressed < 120; pressed += 1) {
    await page.keyboard.press('Tab')
    if (await hasFocus(name)) return
  }
  throw new Error(`Tab never reaches ${name}`)
}

describe('with the keyboard alone', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
    page = await stage.openPage(room.people.caretaker, { path: room.path('today'), device: DESKTOP })
    await taskLine(page, tasks.count).waitFor()
  })
  afterAll(() => stage.close())

  it('the first stop skips the navigation', async () => {
    await page.keyboard.press('Tab')
    expect(await hasFocus(/^Skip to the page/)).toBe(true)
    await page.keyboard.press('Enter')
    await tabTo(/^Tomorrow/)
  })

  it('Escape closes a sheet, and the focus is where it was', async () => {
    await tabTo(tasks.brush)
    await page.keyboard.press('Enter')
    await page.getByRole('dialog').getByRole('region', { name: /^Why/ }).waitFor()
    await expect.poll(() => page.evaluate(() => document.activeElement?.closest('[role=dialog]') !== null)).toBe(true)
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    await expect.poll(() => hasFocus(tasks.brush), soon).toBe(true)
  })

  it('a count is typed and booked', async () => {
    await page.evaluate(() => document.getElementById('main')?.focus())
    await tabTo(tasks.count)
    await page.keyboard.press('Enter')
    const sample = page.getByRole('dialog').getByLabel('Sample 1')
    await sample.waitFor()
    for (
      let pressed = 0;
      pressed < 40 && !(await sample.evaluate((box) => box === document.activeElement));
      pressed += 1
    )
      await page.keyboard.press('Tab')
    await page.keyboard.type('185')
    await page.keyboard.press('Enter')
    await page.getByRole('dialog').waitFor({ state: 'detached' })
    await taskLine(page, tasks.count)
      .getByText(/Counted .*Carla/)
      .waitFor(soon)
    expect(await page.evaluate(() => document.activeElement !== document.body)).toBe(true)
  })

  it('arrow keys walk between the rounds', async () => {
    await tabTo(/^Morning/)
    await page.keyboard.press('ArrowRight')
    await page.getByRole('tab', { name: /^Midday/, selected: true }).waitFor()
    expect(await hasFocus(/^Midday/)).toBe(true)
    await taskSentence(page, tasks.batteryAir).waitFor()
  })
})
