import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { DESKTOP } from '../support/browser.ts'
import { openSheet, soon, taskLine, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom

const actions = (page: Page) => page.getByRole('button', { name: /^(Done|Record|Undo|Strike out|Skip)/ })

describe('what each role finds on the pages', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
  })
  afterAll(() => stage.close())

  it('a viewer reads the list, the sheet and the vessel, and finds nothing to press', async () => {
    const page = await stage.openPage(room.people.viewer, { path: room.path('today') })
    await taskLine(page, tasks.turnBottle).waitFor()
    expect(await actions(page).count()).toBe(0)
    await openSheet(page, tasks.feed)
    await page.getByRole('dialog').getByRole('region', { name: /^Why/ }).waitFor()
    expect(await page.getByRole('dialog').getByRole('textbox').count()).toBe(0)
    expect(await actions(page).count()).toBe(0)
    await page.goto(`${stage.origin}${room.path(`cultures/${room.culture.id}`)}`)
    await page.getByRole('heading', { name: 'What was recorded' }).waitFor()
    await page
      .getByText(/per mL/)
      .first()
      .waitFor()
    expect(await actions(page).count()).toBe(0)
    await page.context().close()
  })

  it('a stand-in signs off, but reads the rules without a field in them', async () => {
    const page = await stage.openPage(room.people.stand_in, { path: room.path('today') })
    await taskLine(page, tasks.turnBottle)
      .getByRole('button', { name: /^Done:/ })
      .waitFor()
    await page.goto(`${stage.origin}${room.path('rules')}`)
    const rule = page.getByRole('article', { name: 'Feed the rotifers' })
    await rule.getByText('75000').or(rule.getByText('75,000')).first().waitFor()
    for (const role of ['textbox', 'checkbox', 'combobox', 'spinbutton'] as const)
      expect(await page.getByRole('main').getByRole(role).count()).toBe(0)
    await page.context().close()
  })

  it('a caretaker sees what a rule would change tomorrow before saving it, and tomorrow is so', async () => {
    const page = await stage.openPage(room.people.caretaker, { path: room.path('rules'), device: DESKTOP })
    const rule = page.getByRole('article', { name: 'Feed the rotifers' })
    await rule.getByRole('textbox', { name: /cells a rotifer a day/ }).fill('150000')
    await rule.getByRole('button', { name: 'See what tomorrow would change' }).click()
    const preview = rule.getByText(/concentrate.* becomes /).first()
    await preview.waitFor(soon)
    const becomes = ((await preview.textContent()) ?? '').match(/becomes\s+([\d.]+\s+mL)/)?.[1]?.replace(/\s+/, ' ')
    await rule.getByRole('button', { name: 'Save the rule' }).click()
    await rule.getByText(/Changed by Carla/).waitFor(soon)
    await page.goto(`${stage.origin}${room.path('today?date=tomorrow')}`)
    await taskLine(page, new RegExp(`${becomes} concentrate`))
      .first()
      .waitFor(soon)
    await page.context().close()
  })
})
