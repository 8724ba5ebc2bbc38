import type { Locator, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { makeProfile, openProcess } from '../support/browser-process.ts'
import { watchRequests } from '../support/browser-quiet.mjs'
import { hasLoadedAhead, openSheet, soon, tapDone, taskLine, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type Cable, layCable } from '../support/stage-cable.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom
let cable: Cable
const profile = makeProfile()

/** Opens a page, and waits until what it loads after itself has come, as it has on a phone in use. */
async function open(page: Page, path: string): Promise<void> {
  const isQuiet = watchRequests(page)
  await page.goto(`${cable.origin}${room.path(path)}`)
  await hasLoadedAhead(page)
  await isQuiet()
}
const waiting = (page: Page, count: number): Locator => page.getByText(`${count} waiting for network.`)
const signOffsOf = (ruleId: string) => stage.world.database.prisma.signOff.count({ where: { task: { ruleId } } })
const navTab = (page: Page, name: string) => page.getByRole('navigation').getByRole('link', { name, exact: true })

async function pullCable(page: Page): Promise<void> {
  cable.pull()
  await page
    .getByText(/no connection/)
    .first()
    .waitFor(soon)
}

beforeAll(async () => {
  stage = await openStage()
  room = await openLivedInRoom(stage)
  cable = await layCable(stage.port)
})
afterEach(() => cable.plugIn())
afterAll(async () => {
  await stage.close()
  await cable.close()
  profile.remove()
})

describe('what is meant without a network', () => {
  it('outlives the browser: it crashes with three unsent and one half typed, and each is sent once', async () => {
    const note = 'the third pump hums'
    const first = await openProcess(profile.folder)
    await stage.signIn(first.context, room.people.caretaker, cable.origin)
    const page = await first.context.newPage()
    await open(page, 'today')
    const sheet = await openSheet(page, tasks.lookOver)
    await pullCable(page)
    await sheet.getByRole('textbox', { name: /note/i }).fill(note)
    await sheet.getByRole('button', { name: 'Done', exact: true }).click()
    await sheet.getByRole('button', { name: 'Go on with the round' }).click()
    await sheet.waitFor({ state: 'detached' })
    await tapDone(page, tasks.lightTimers)
    await tapDone(page, tasks.turnBottle)
    await (await openSheet(page, tasks.preyCount)).getByLabel('Sample 1').fill('7')
    await waiting(page, 3).waitFor(soon)
    // Until it is written: a person who stops typing has it kept, one who dies in mid-word has not.
    await expect.poll(() => keptDrafts(page), soon).toBe(1)
    await first.crash()

    cable.plugIn()
    const second = await openProcess(profile.folder)
    await stage.signIn(second.context, room.people.caretaker, cable.origin)
    const again = await second.context.newPage()
    await open(again, 'today')
    for (const task of [tasks.lightTimers, tasks.turnBottle, tasks.lookOver])
      await taskLine(again, task).getByText(/Carla/).waitFor(soon)
    for (const ruleId of ['room-day-length', 'concentrate-shake', 'room-equipment'])
      expect([ruleId, await signOffsOf(ruleId)]).toEqual([ruleId, 1])
    const noted = await stage.world.database.prisma.signOff.findMany({ where: { task: { ruleId: 'room-equipment' } } })
    expect(JSON.stringify(noted[0]?.values)).toContain(note)
    const begun = await openSheet(again, tasks.preyCount)
    await begun.getByText(/You had begun this/).waitFor(soon)
    expect(await begun.getByLabel('Sample 1').inputValue()).toBe('7')
    await second.crash()
  })

  it('stays where it is when a tab is tapped: the page waits, and opens when the network is back', async () => {
    const page = await stage.openPage(room.people.caretaker, { path: room.path('hand-over'), origin: cable.origin })
    await open(page, 'hand-over')
    const note = 'the air stone in the second tank is blocked'
    await page.getByLabel('What should they know?').fill(note)
    await pullCable(page)
    await page.getByRole('button', { name: 'Write the note' }).click()
    await waiting(page, 1).waitFor(soon)
    await page.getByRole('button', { name: 'Go on', exact: true }).click()
    await page.getByLabel('What should they know?').fill('and the')
    await navTab(page, 'Room').click()
    await page.getByText(/The page you tapped opens when it is back/).waitFor(soon)
    await waiting(page, 1).waitFor(soon)
    expect(await page.getByLabel('What should they know?').inputValue()).toBe('and the')
    cable.plugIn()
    await page.waitForURL(/\/room$/, soon)
    await page.getByRole('heading', { level: 1, name: 'Room' }).waitFor(soon)
    // The page that opens has not read yet what waits: nothing at its foot is no sign that all is sent.
    await expect.poll(() => stage.world.database.prisma.note.count({ where: { text: note } }), soon).toBe(1)
    await waiting(page, 1).waitFor({ state: 'detached', ...soon })
    await navTab(page, 'Hand-over').click()
    await page.getByText(/You had begun this/).waitFor(soon)
    expect(await page.getByLabel('What should they know?').inputValue()).toBe('and the')
  })

  it('is nobody else’s: another person on the same device neither sends nor sees it', async () => {
    const page = await stage.openPage(room.people.caretaker, { path: room.path('hand-over'), origin: cable.origin })
    await open(page, 'hand-over')
    const note = 'two dead in the third tank'
    const written = () => stage.world.database.prisma.note.count({ where: { text: note } })
    await page.getByLabel('What should they know?').fill(note)
    await pullCable(page)
    await page.getByRole('button', { name: 'Write the note' }).click()
    await waiting(page, 1).waitFor(soon)
    await stage.signIn(page.context(), room.people.stand_in, cable.origin)
    cable.plugIn()
    await page.getByText('1 waiting for you to sign in.').waitFor(soon)
    await open(page, 'hand-over')
    await page.getByText(/Carla left 1 entry on this device/).waitFor(soon)
    expect(await page.getByText(note).count()).toBe(0)
    expect(await written()).toBe(0)
    await stage.signIn(page.context(), room.people.caretaker, cable.origin)
    await open(page, 'hand-over')
    await page.getByText(note).waitFor(soon)
    expect(await written()).toBe(1)
  })
})

describe('a browser whose session is ended from another one', () => {
  it('goes to signing in at once, and keeps what waited until its person is back', async () => {
    const page = await stage.openPage(room.people.caretaker, { path: room.path('hand-over'), origin: cable.origin })
    await open(page, 'hand-over')
    const note = 'a word before the session ended'
    await page.route(/\/notes$/, (route) => route.abort('connectionreset'))
    await page.getByLabel('What should they know?').fill(note)
    await page.getByRole('button', { name: 'Write the note' }).click()
    await waiting(page, 1).waitFor(soon)
    await stage.world.ok(room.people.caretaker, 'endOtherSessions')
    await page.waitForURL(/\/sign-in\?next=/, soon)
    await page.unrouteAll()
    await stage.signIn(page.context(), room.people.caretaker, cable.origin)
    await open(page, 'hand-over')
    await page.getByText(note).waitFor(soon)
    expect(await stage.world.database.prisma.note.count({ where: { text: note } })).toBe(1)
  })
})

describe('a fact whose first answer was lost', () => {
  it('is one fact after the second tap', async () => {
    const page = await stage.openPage(room.people.caretaker, { path: room.path(`cultures/${room.culture.id}`) })
    const posts: string[] = []
    await page.route(/\/facts$/, async (route) => {
      posts.push(route.request().headers()['idempotency-key'] ?? '')
      const answer = await route.fetch()
      await (posts.length === 1 ? route.abort('connectionreset') : route.fulfill({ response: answer }))
    })
    await page.getByRole('button', { name: 'A water test' }).click()
    await page.getByRole('textbox', { name: /^Temperature/ }).fill('24.7')
    const record = page.getByRole('button', { name: 'Record', exact: true })
    await record.click()
    await expect.poll(() => posts.length, soon).toBeGreaterThan(0)
    // The button is busy; a thumb presses it all the same.
    if (await record.isVisible()) await record.dispatchEvent('click')
    await page.getByText(`Recorded: ${room.culture.name}`).waitFor(soon)
    expect(posts.length).toBeGreaterThan(1)
    expect(new Set(posts).size).toBe(1)
    const facts = await stage.world.database.prisma.fact.findMany({
      where: { subjectId: room.culture.id, kind: 'water_test' },
    })
    expect(facts).toHaveLength(1)
  })
})

/** How many drafts this browser has on its disk. */
const keptDrafts = (page: Page): Promise<number> =>
  page.evaluate(
    () =>
      new Promise<number>((resolve, reject) => {
        const opening = indexedDB.open('fryward')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const counting = opening.result.transaction('drafts').objectStore('drafts').count()
          counting.onsuccess = () => resolve(counting.result)
        }
      }),
  )
