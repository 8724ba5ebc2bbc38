import type { BodyInputOf, Fact } from '@fryward/shared'
import type { BrowserContextOptions, Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { DESKTOP, PHONE } from '../support/browser.ts'
import { soon } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom
let feedings: Fact[]

const minutesAgo = (minutes: number) => new Date(Date.now() - minutes * 60_000).toISOString()
const record = (body: BodyInputOf<'recordFact'>) =>
  stage.world.ok(room.people.caretaker, 'recordFact', { params: { roomId: room.roomId }, body })

/** The line of a record or of a fold, by what it says. */
const line = (page: Page, what: string | RegExp): Locator => page.getByRole('listitem').filter({ hasText: what })
const history = (page: Page): Locator =>
  page.locator('section').filter({ has: page.getByRole('heading', { name: 'What was recorded' }) })
const openBatch = (hash = '', device: BrowserContextOptions = PHONE) =>
  stage.openPage(room.people.caretaker, { path: `${room.path(`batches/${room.batch.id}`)}${hash}`, device })

describe('what was recorded, day by day', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
    const subjectId = room.batch.id
    feedings = []
    // All of them on this morning of the room: it is past nine there.
    for (const minutes of [150, 90, 2]) {
      const data = { food: 'rotifers', amountMl: 200, animals: 40_000 } as const
      feedings.push(await record({ kind: 'feeding', subjectId, at: minutesAgo(minutes), data }))
    }
    await record({ kind: 'loss', subjectId, at: minutesAgo(2000), data: { number: 3, of: 'larvae' } })
  })
  afterAll(() => stage.close())

  it('stands under the days as people say them', async () => {
    const page = await openBatch()
    const headings = history(page).getByRole('heading', { level: 3 })
    await headings.first().waitFor(soon)
    expect((await headings.allTextContents()).slice(0, 2)).toEqual(['Today', 'Yesterday'])
    await page.context().close()
  })

  it('folds the feedings of a day into one line that opens', async () => {
    const page = await openBatch()
    const fold = line(page, 'Fed 3 times: 120,000 rotifers').first()
    await fold.waitFor(soon)
    expect(await line(page, '200 mL, 40,000 animals, rotifers').count()).toBe(0)
    await fold.getByRole('button', { name: /^Each of them/ }).click()
    expect(await fold.getByRole('listitem').count()).toBe(3)
    await page.context().close()
  })

  it('stands open at the feeding that the address points at', async () => {
    const page = await openBatch(`#fact-${feedings[0]?.id}`)
    await page.locator(`#fact-${feedings[0]?.id}`).waitFor(soon)
    await page.context().close()
  })

  it('holds what can be done with a record back until it is asked for, at thumb size', async () => {
    const page = await openBatch()
    const count = line(page, '6 per mL').first()
    const more = count.getByRole('button', { name: /^More: Count/ })
    await more.waitFor(soon)
    expect(await page.getByRole('button', { name: /^Strike out/ }).count()).toBe(0)
    const size = await more.boundingBox()
    expect(Math.min(size?.width ?? 0, size?.height ?? 0)).toBeGreaterThanOrEqual(48)
    await more.press('Enter')
    await count.getByRole('button', { name: /^Strike out/ }).waitFor()
    await page.context().close()
  })

  it('is narrowed to one kind, and finds it far back', async () => {
    // More than a page of them, younger than the loss.
    for (let i = 0; i < 60; i++)
      await record({
        kind: 'observation',
        subjectId: room.batch.id,
        at: minutesAgo(1500 - i),
        data: { signs: ['all_well'] },
      })
    const page = await openBatch('', DESKTOP)
    await line(page, 'all well').first().waitFor(soon)
    expect(await line(page, '3 larvae').count()).toBe(0)
    await history(page).getByRole('combobox').selectOption('Losses')
    await line(page, '3 larvae').waitFor(soon)
    expect(await history(page).getByRole('listitem').count()).toBe(1)
    await history(page).getByRole('combobox').selectOption('Everything')
    await page.getByRole('button', { name: 'Show older' }).click()
    await line(page, '3 larvae').waitFor(soon)
    await page.context().close()
  })

  it('a feeding struck out of the fold stays in sight, and the fold no longer counts it', async () => {
    const page = await openBatch()
    const fold = line(page, /Fed 3 times/).first()
    await fold.getByRole('button', { name: /^Each of them/ }).click()
    const first = page.locator(`#fact-${feedings[0]?.id}`)
    await first.getByRole('button', { name: /^More: Feeding/ }).click()
    await first.getByRole('button', { name: /^Strike out/ }).click()
    await first.getByLabel('What was wrong with it?').fill('Written down twice')
    await first.getByRole('button', { name: 'Strike it out' }).click()
    await first.getByText('struck out by Carla: Written down twice').waitFor(soon)
    await line(page, 'Fed 2 times: 80,000 rotifers').first().waitFor(soon)
    expect(await first.locator('s').textContent()).toContain('200 mL')
    await page.context().close()
  })
})
