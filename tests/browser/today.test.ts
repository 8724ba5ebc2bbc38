import { randomUUID } from 'node:crypto'
import { gzipSync } from 'node:zlib'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { findAccessibilityViolations } from '../support/accessibility.ts'
import { DESKTOP, PHONE } from '../support/browser.ts'
import { openSheet, soon, taskLine, taskSentence, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom, todaysTasks } from '../support/stage-room.ts'
import { zoneAtHour } from '../support/stage-zone.mjs'

let stage: Stage
let room: LivedInRoom

const openToday = (who: 'caretaker' | 'owner' = 'caretaker', device?: typeof DESKTOP) =>
  stage.openPage(room.people[who], { path: room.path('today'), ...(device && { device }) })
const round = (page: Page, name: string): Locator => page.getByRole('tab', { name: new RegExp(`^${name}`) })
const isChosen = (page: Page, name: string) =>
  page.getByRole('tab', { name: new RegExp(`^${name}`), selected: true }).waitFor(soon)
const stop = (page: Page, name: string): Locator => page.getByRole('region', { name, exact: true })
const edges = async (place: Locator) => {
  const box = await place.boundingBox()
  if (!box) throw new Error(`${place} is not on the page`)
  return { top: box.y, bottom: box.y + box.height }
}

describe('Today at eleven, the morning late', () => {
  let page: Page
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage, { timeZone: zoneAtHour(11) })
    page = await openToday()
    await page.getByRole('heading', { name: /\d+ late/ }).waitFor(soon)
  })
  afterAll(() => stage.close())

  it('leaves the rounds and the first stop on the first screen of a phone', async () => {
    const late = page.getByRole('region', { name: /late/ })
    expect(await late.getByRole('listitem').count()).toBe(4)
    const { top } = await edges(page.getByRole('navigation', { name: 'Room' }))
    expect((await edges(page.getByRole('tablist', { name: 'Rounds' }))).bottom).toBeLessThan(top)
    expect((await edges(page.getByRole('tabpanel').getByRole('heading', { level: 2 }).first())).top).toBeLessThan(top)
  })

  for (const [size, device] of Object.entries({ phone: PHONE, desktop: DESKTOP }))
    it(`holds WCAG 2.2 A and AA with its late tasks, its folds open and a sheet, ${size}`, async () => {
      const one = await stage.openPage(room.people.caretaker, { path: room.path('today'), device })
      await one.getByRole('button', { name: /more, late$/ }).click()
      await round(one, 'Morning').click()
      await one.getByRole('button', { name: /^Midday is next/ }).waitFor(soon)
      expect(await findAccessibilityViolations(one)).toEqual([])
      await openSheet(one, tasks.count)
      await one.getByRole('dialog').getByRole('region', { name: /^Why/ }).waitFor(soon)
      expect(await findAccessibilityViolations(one)).toEqual([])
      await one.context().close()
    })

  it('asks for its first answers along with its scripts, and for each once', async () => {
    const asked = await page.evaluate(() =>
      performance
        .getEntriesByType('resource')
        .filter(({ name }) => /\/api\/v1\/(me|rooms\/[^/]+(\/days\/today)?)$/.test(name))
        .map((entry) => (entry as PerformanceResourceTiming).initiatorType),
    )
    expect(asked).toEqual(['link', 'link', 'link'])
  })

  it('begins with at most 181 kB of script, zipped, and no schemas: they come with the first form', async () => {
    const get = async (path: string) => (await page.request.get(new URL(path, page.url()).href)).text()
    const tags = (await get(page.url())).match(/<script[^>]* src="[^>]*>/g) ?? []
    // What stands there for browsers without modules is not asked for by others.
    const begins = tags.filter((tag) => !/nomodule/i.test(tag)).map((tag) => / src="([^"]*)"/.exec(tag)?.[1] ?? '')
    expect(begins.length).toBeGreaterThan(5)
    let bytes = 0
    for (const path of new Set(begins)) {
      const script = await get(path)
      expect(/_zod|ZodMini/.test(script), path).toBe(false)
      bytes += gzipSync(script).length
    }
    expect(bytes).toBeLessThan(181_000)
    expect(bytes).toBeGreaterThan(130_000)
  })

  it('unfolds what more is late', async () => {
    const all = (await todaysTasks(stage, room)).filter((task) => task.state === 'open' && task.roundId === 'morning')
    await page.getByRole('button', { name: `${all.length - 4} more, late` }).click()
    expect(await page.getByRole('region', { name: /late/ }).getByRole('listitem').count()).toBe(all.length)
  })

  it('opens on the next round, for the late ones stand above all', async () => {
    await isChosen(page, 'Midday')
  })

  it('says of a round with nothing else that it is seen to, and leads to the next', async () => {
    await round(page, 'Morning').click()
    await page.getByText(/Morning: the \d+ late ones stand above/).waitFor(soon)
    await page.getByRole('button', { name: /^Midday is next, 13:00, \d+ open/ }).click()
    await isChosen(page, 'Midday')
  })
})

describe('Today at nine', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
  })
  afterAll(() => stage.close())

  const signOff = async (what: (one: { ruleId: string }) => boolean) => {
    const found = (await todaysTasks(stage, room)).find((task) => task.state === 'open' && what(task))
    if (!found) throw new Error('no such task is open')
    // Too long ago to be taken back.
    stage.world.clock.set(new Date(Date.now() - 20 * 60_000).toISOString())
    const params = { roomId: room.roomId, taskId: found.id }
    await stage.world.ok(room.people.owner, 'signOffTask', { params, body: { values: {} }, key: randomUUID() })
    stage.world.clock.set(new Date().toISOString())
  }

  it('folds the stops that are seen to into one line, and shows them in their places', async () => {
    await signOff((task) => task.ruleId === 'concentrate-shake')
    const page = await openToday()
    const walk = page.getByRole('tabpanel')
    await walk.getByText('All seen to: microalgae').waitFor(soon)
    expect(await walk.getByRole('heading', { name: 'Microalgae' }).count()).toBe(0)
    await walk.getByRole('button', { name: 'Show what is seen to' }).click()
    expect(await walk.getByRole('heading', { level: 2 }).first().textContent()).toBe('Microalgae')
    await walk.getByRole('button', { name: 'Fold what is seen to' }).click()
    expect(await walk.getByRole('heading', { name: 'Microalgae' }).count()).toBe(0)
    await page.context().close()
  })

  it('signs off a stop as planned, each task by itself, and takes all of them back with one tap', async () => {
    const page = await openToday()
    const broodstock = stop(page, 'Broodstock')
    const ready = broodstock.getByRole('button', { name: /^Done:/ })
    await ready.first().waitFor(soon)
    const many = await ready.count()
    expect(many).toBeGreaterThan(1)
    const standing = () =>
      stage.world.database.prisma.signOff.count({ where: { userId: room.people.caretaker.userId, undoneAt: null } })
    const before = await standing()
    expect(await findAccessibilityViolations(page)).toEqual([])
    await broodstock.getByRole('button', { name: new RegExp(`${many}( of \\d+)? as planned: Broodstock`) }).click()
    await page.getByRole('status').getByText(`${many} as planned: Broodstock`).waitFor(soon)
    expect(await standing()).toBe(before + many)
    expect(await ready.count()).toBe(0)
    expect(await broodstock.getByRole('button', { name: /^Record:/ }).count()).toBeGreaterThan(0)
    await page.getByRole('button', { name: `Undo all ${many}` }).click()
    await expect.poll(() => ready.count(), soon).toBe(many)
    expect(await standing()).toBe(before)
    await page.context().close()
  })

  it('says in the sheet how much once', async () => {
    const page = await openToday()
    const sheet = await openSheet(page, tasks.feed)
    const amount = (await todaysTasks(stage, room)).find((task) => task.ruleId === 'rotifer-feed')?.amount?.value
    // The steps may name it again, where a hand needs it.
    const told = await sheet.evaluate((element) => {
      const copy = element.cloneNode(true)
      if (!(copy instanceof HTMLElement)) throw new Error('a sheet is an element')
      for (const part of copy.querySelectorAll('ol, form')) part.remove()
      return copy.textContent
    })
    expect(told.match(new RegExp(`${amount}\\s*mL`, 'g'))).toHaveLength(1)
    expect(await sheet.getByRole('heading', { name: new RegExp(`${amount}\\s*mL concentrate`) }).count()).toBe(1)
    await page.context().close()
  })

  it('keeps in sight what a count makes while it is typed', async () => {
    const page = await openToday()
    const sheet = await openSheet(page, tasks.count)
    await sheet.getByLabel('Sample 1').fill('180')
    const makes = sheet.getByText(/^Makes 180\s+per mL/)
    await makes.waitFor(soon)
    expect((await edges(makes)).bottom).toBeLessThan(
      (await edges(sheet.getByRole('button', { name: 'Done', exact: true }))).top,
    )
    expect((await edges(sheet.getByRole('button', { name: 'Done', exact: true }))).bottom).toBeLessThanOrEqual(
      PHONE.viewport.height,
    )
    await page.context().close()
  })

  it('has Done on the screen however long the steps are', async () => {
    const page = await openToday()
    await round(page, 'Midday').click()
    const sheet = await openSheet(page, /bottom siphoned/)
    const done = sheet.getByRole('button', { name: 'Done', exact: true })
    await done.waitFor(soon)
    expect((await edges(sheet.getByRole('heading', { name: /^Why/ }))).bottom).toBeGreaterThan(PHONE.viewport.height)
    await expect.poll(async () => (await edges(done)).bottom, soon).toBeLessThanOrEqual(PHONE.viewport.height)
    await page.context().close()
  })

  it('keeps the list in use beside a sheet on a wide screen, and what was typed in another', async () => {
    const page = await openToday('caretaker', DESKTOP)
    const sheet = await openSheet(page, tasks.count)
    await sheet.getByLabel('Sample 1').fill('170')
    await taskSentence(page, tasks.feed).click()
    await sheet.getByRole('heading', { name: tasks.feed }).waitFor(soon)
    await taskSentence(page, tasks.count).click()
    expect(await sheet.getByLabel('Sample 1').inputValue()).toBe('170')
    await page.goBack()
    await sheet.waitFor({ state: 'detached', ...soon })
    expect(new URL(page.url()).pathname).toBe(room.path('today'))
    expect((await edges(taskLine(page, tasks.count))).top).toBeGreaterThan(0)
    await page.context().close()
  })

  it('says who has the room today, once somebody takes it', async () => {
    const page = await openToday()
    const others = await openToday('owner')
    await page.getByRole('button', { name: 'I have it' }).click()
    await page.getByText('You have the room').waitFor(soon)
    await others.getByText('On duty: Carla').waitFor(soon)
    await page.getByRole('button', { name: 'Give it back' }).click()
    await others.getByText('Who has the room?').waitFor(soon)
    for (const one of [page, others]) await one.context().close()
  })
})
