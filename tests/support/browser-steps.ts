import type { Locator, Page } from 'playwright-core'
import { patienceMs } from './browser.ts'

/** What is looked for comes in well under a second; a machine on which a whole page takes twenty must not fail it. */
export const soon = { timeout: patienceMs }

/** Tasks of the lived-in room as its list says them. */
export const tasks = {
  turnBottle: /turn over green bottle/i,
  count: /count\b.*\beggs/i,
  feed: /mL concentrate/,
  lookOver: /look over air/i,
  preyCount: /count the rotifers left/i,
  lightTimers: /check the light timers/i,
  batteryAir: /test the battery air/i,
}

/** The list line of a task. */
export const taskLine = (page: Page, what: RegExp): Locator =>
  page.getByRole('listitem').filter({ has: page.getByRole('button', { name: what }) })

/** The button that opens a task's sheet: its sentence. */
export const taskSentence = (page: Page, what: RegExp): Locator =>
  taskLine(page, what).getByRole('button', { name: what }).first()

/** Opens a task's sheet by its sentence. */
export async function openSheet(page: Page, what: RegExp): Promise<Locator> {
  await taskSentence(page, what).click()
  const sheet = page.getByRole('dialog')
  await sheet.waitFor()
  return sheet
}

/** One tap, where nothing has to be measured. */
export const tapDone = (page: Page, what: RegExp): Promise<void> =>
  taskLine(page, what)
    .getByRole('button', { name: /^Done:/ })
    .click()

/** Waits until a page has what it loads after itself and needs without a network. */
export const hasLoadedAhead = (page: Page): Promise<void> =>
  page.getByRole('status', { name: 'What waits on this device' }).waitFor({ state: 'attached', ...soon })

/** Holds what two pages send to an address until both have sent it, so that neither knows of the other. */
export async function holdUntilBoth(pages: [Page, Page], address: RegExp): Promise<void> {
  let release = () => {}
  const both = new Promise<void>((resolve) => {
    release = resolve
  })
  let arrived = 0
  for (const page of pages)
    await page.route(
      address,
      async (route) => {
        arrived += 1
        if (arrived === pages.length) release()
        await both
        await route.continue()
      },
      { times: 1 },
    )
}

/** Holds back what pages ask an address for, until the returned function is called: a list that has not caught up. */
export async function holdBack(pages: Page[], address: RegExp): Promise<() => void> {
  let release = () => {}
  const released = new Promise<void>((resolve) => {
    release = resolve
  })
  for (const page of pages)
    await page.route(address, async (route) => {
      await released
      await route.continue()
    })
  return release
}
