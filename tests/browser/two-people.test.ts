import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { DESKTOP, PHONE } from '../support/browser.ts'
import { holdBack, holdUntilBoth, openSheet, soon, tapDone, taskLine, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom
let desk: Page
let phone: Page
const ben = { name: 'Ben', email: 'ben@fish.example', password: 'a long enough password' }

/** The page on which something is seen first. */
const firstOf = (isSeen: (page: Page) => Promise<void>): Promise<Page> =>
  Promise.any([desk, phone].map((page) => isSeen(page).then(() => page)))

const countsOfPrey = () =>
  stage.world.database.prisma.fact.count({ where: { kind: 'count', subjectId: room.batch.id } })

const notReloaded = (page: Page) => page.evaluate(() => 'wasHereAllAlong' in window)

describe('two people in one room', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
    desk = await stage.openPage(room.people.owner, { path: room.path('people'), device: DESKTOP })
  })
  afterAll(() => stage.close())

  it('an invitation link carries a role, and whoever opens it on a phone joins with it', async () => {
    await desk.getByRole('radio', { name: 'Caretaker' }).check()
    await desk.getByRole('button', { name: 'Make a link', exact: true }).click()
    const link = await desk.getByLabel('Invitation link').inputValue()
    phone = await stage.openPage(null, { path: new URL(link).pathname, device: PHONE })
    await phone.getByText(/The owner invites you to Back room/).waitFor()
    await phone.getByLabel('Your name').fill(ben.name)
    await phone.getByLabel('Email').fill(ben.email)
    await phone.getByRole('textbox', { name: 'Password' }).fill(ben.password)
    await phone.getByRole('button', { name: 'Make my account and join' }).click()
    await phone.waitForURL(/\/today/)
    await phone.getByRole('tablist', { name: 'Rounds' }).waitFor()
  })

  it('who signed out comes in again by email and password', async () => {
    await phone.goto(`${stage.origin}${room.path('more')}`)
    await phone.getByRole('button', { name: 'Sign out Ben' }).click()
    // Not led back to where they were: whoever signs in next begins on Today.
    await phone.waitForURL(/\/sign-in$/)
    await phone.getByLabel('Email').fill(ben.email)
    await phone.getByRole('textbox', { name: 'Password' }).fill('not the password')
    await phone.getByRole('button', { name: 'Sign in' }).click()
    await phone.getByRole('alert').filter({ hasText: /\w/ }).waitFor()
    await phone.getByRole('textbox', { name: 'Password' }).fill(ben.password)
    await phone.getByRole('button', { name: 'Sign in' }).click()
    await phone.getByRole('tablist', { name: 'Rounds' }).waitFor(soon)
  })

  it('what the phone signs off shows on the desk without a reload', async () => {
    await desk.goto(`${stage.origin}${room.path('today')}`)
    await desk.evaluate(() => Object.assign(window, { wasHereAllAlong: true }))
    await taskLine(desk, tasks.turnBottle).waitFor()
    await tapDone(phone, tasks.turnBottle)
    await taskLine(desk, tasks.turnBottle)
      .getByText(/Shaken .*Ben/)
      .waitFor(soon)
    expect(await notReloaded(desk)).toBe(true)
  })

  it('a count on the phone changes the amount of the feed on the desk', async () => {
    const feed = taskLine(desk, tasks.feed)
    const before = await feed.textContent()
    const sheet = await openSheet(phone, tasks.count)
    await sheet.getByLabel('Sample 1').fill('240')
    await sheet.getByRole('button', { name: 'Done', exact: true }).click()
    await feed.getByText(/mL until \d\d:\d\d/).waitFor(soon)
    await expect.poll(() => feed.textContent(), soon).not.toBe(before)
    expect(await notReloaded(desk)).toBe(true)
  })

  it('of two who tap the same task at once, the second is told who did it and when', async () => {
    const text = tasks.lightTimers
    await holdUntilBoth([desk, phone], /\/sign-off$/)
    await Promise.all([tapDone(desk, text), tapDone(phone, text)])
    const told = /^(Ben|The owner) did this at \d\d:\d\d\. Nothing was booked for you/
    const second = await firstOf((page) => page.getByText(told).waitFor(soon))
    await second.getByRole('button', { name: 'I did it too' }).click()
    await taskLine(desk, text)
      .getByText(/done twice/)
      .waitFor(soon)
  })

  it('of two who measured the same at once, the second can say that it was really done twice', async () => {
    const text = tasks.preyCount
    for (const page of [desk, phone]) await (await openSheet(page, text)).getByLabel('Sample 1').fill('6')
    await holdUntilBoth([desk, phone], /\/sign-off$/)
    const before = await countsOfPrey()
    const catchUp = await holdBack([desk, phone], /\/days\//)
    const press = (page: Page) => page.getByRole('dialog').getByRole('button', { name: 'Done', exact: true }).click()
    await Promise.all([press(desk), press(phone)])
    const told = (page: Page) =>
      page
        .getByRole('dialog')
        .getByRole('alert')
        .filter({ hasText: /did this at \d\d:\d\d/ })
    const second = await firstOf((page) => told(page).waitFor(soon))
    expect(await told(second).textContent()).toContain(second === desk ? 'Ben did this at' : 'The owner did this at')
    await second.getByRole('button', { name: 'I really did it too' }).click()
    catchUp()
    await taskLine(desk, text)
      .getByText(/done twice/)
      .waitFor(soon)
    await expect.poll(countsOfPrey, soon).toBe(before + 2)
  })
})
