import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openSheet, soon, tapDone, taskLine, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom, todaysTasks } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom
let page: Page

const firstFeedMl = async () =>
  (await todaysTasks(stage, room)).find((task) => task.ruleId === 'rotifer-feed' && task.roundId === 'morning')?.amount

describe('a morning on the phone', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
    page = await stage.openPage(room.people.caretaker, { path: room.path('today') })
  })
  afterAll(() => stage.close())

  it('what needs no number is done in one tap, and undone', async () => {
    const line = taskLine(page, tasks.turnBottle)
    await tapDone(page, tasks.turnBottle)
    await line.getByText(/Shaken .*Carla/).waitFor(soon)
    await line.getByRole('button', { name: /^Undo/ }).click()
    await line.getByRole('button', { name: /^Done:/ }).waitFor(soon)
  })

  it('tomorrow is a swipe away, and today a swipe back', async () => {
    const swipe = await swiper(page)
    await page
      .getByRole('heading', { name: /^Rotifers/ })
      .first()
      .waitFor(soon)
    await swipe('left')
    await page.waitForURL(/date=tomorrow/)
    await page.getByRole('heading', { level: 1, name: /^Tomorrow/ }).waitFor(soon)
    await page.getByRole('tablist').waitFor(soon)
    await swipe('right')
    await page.waitForURL((url) => !url.search.includes('date'))
    await page.getByRole('tablist').waitFor(soon)
  })

  it('a task is skipped with a reason that stands in the list', async () => {
    const text = tasks.lookOver
    const sheet = await openSheet(page, text)
    await sheet.getByRole('button', { name: /^Skip/ }).click()
    await sheet.getByRole('button', { name: 'Skip this' }).click()
    await sheet.getByText(/Say in a few words why/).waitFor()
    await sheet.getByRole('radio', { name: 'No time in this round' }).check()
    await sheet.getByRole('button', { name: 'Skip this' }).click()
    await taskLine(page, text)
      .getByText(/Skipped by Carla: No time in this round/)
      .waitFor(soon)
  })

  it('the why names the count, the parameter and its source, and leads to the record', async () => {
    const sheet = await openSheet(page, tasks.feed)
    const why = sheet.getByRole('region', { name: /^Why/ })
    await why.getByText('Pfeiffer & Ludwig 2007').first().waitFor(soon)
    const chain = (await why.textContent()) ?? ''
    for (const said of [/180\s+per mL/, /18\s+L/, /75,000/, /Pfeiffer & Ludwig 2007/, /65\s+billion/])
      expect(chain).toMatch(said)
    const [fact] = await stage.world.database.prisma.fact.findMany({
      where: { subjectId: room.culture.id, kind: 'count' },
      orderBy: { at: 'desc' },
    })
    await why
      .getByRole('link', { name: /The owner/ })
      .first()
      .click()
    await page.waitForURL(new RegExp(`/cultures/${room.culture.id}#fact-${fact?.id}`))
    await page.goto(`${stage.origin}${room.path('today')}`)
  })

  it('an improbable count is read back before it is booked, and the list follows from it', async () => {
    const before = await firstFeedMl()
    const sheet = await openSheet(page, tasks.count)
    await sheet.getByLabel('Sample 1').fill('900')
    await sheet.getByRole('button', { name: 'Done', exact: true }).click()
    await sheet.getByText('Is this right?').waitFor()
    await sheet.getByRole('button', { name: 'Look at it again' }).click()
    expect(await sheet.getByLabel('Sample 1').inputValue()).toBe('900')
    await sheet.getByRole('button', { name: 'Done', exact: true }).click()
    await sheet.getByRole('button', { name: 'Yes, it is right' }).click()
    await sheet.waitFor({ state: 'detached' })
    await taskLine(page, tasks.feed)
      .getByText(/mL until \d\d:\d\d/)
      .waitFor(soon)
    expect((await firstFeedMl())?.value).toBeGreaterThan(2 * (before?.value ?? 0))
  })

  it('struck out on the page of the vessel, the wrong count takes its consequences with it', async () => {
    await page.goto(`${stage.origin}${room.path(`cultures/${room.culture.id}`)}`)
    const record = page.getByRole('listitem').filter({ hasText: '900 per mL' }).first()
    await record.getByRole('button', { name: /^More: Count/ }).click()
    await record.getByRole('button', { name: /^Strike out/ }).click()
    await page.getByLabel('What was wrong with it?').fill('A zero too many')
    await page.getByRole('button', { name: 'Strike it out' }).click()
    await record.getByText(/struck out by Carla: A zero too many/).waitFor(soon)
    await page.goto(`${stage.origin}${room.path('today')}`)
    await taskLine(page, tasks.feed)
      .getByText(/mL until \d\d:\d\d/)
      .waitFor(soon)
    const amount = await firstFeedMl()
    expect(amount?.value).toBeLessThan(2.5)
    await taskLine(page, new RegExp(`${amount?.value} mL concentrate`)).waitFor(soon)
  })
})

/** Draws a finger across the page. */
async function swiper(page: Page): Promise<(to: 'left' | 'right') => Promise<void>> {
  const client = await page.context().newCDPSession(page)
  return async (to) => {
    const [fromX, toX] = to === 'left' ? [320, 60] : [60, 320]
    const y = 500
    await client.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x: fromX, y }] })
    await client.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [{ x: toX, y: y + 4 }] })
    await client.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
  }
}
