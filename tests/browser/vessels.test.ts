import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { soon } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom

describe('the pages of what lives in a room', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
  })
  afterAll(() => stage.close())

  it('the room shows who lives in which tank, each with its own way in', async () => {
    const page = await stage.openPage(room.people.viewer, { path: room.path('room') })
    const tank = page.getByRole('listitem').filter({ has: page.getByRole('link', { name: room.larvalTank.name }) })
    const larvae = tank.first().getByRole('link', { name: room.batch.name })
    await larvae.waitFor(soon)
    expect((await larvae.boundingBox())?.height).toBeGreaterThanOrEqual(48)
    await larvae.click()
    await page.getByRole('heading', { level: 1, name: room.batch.name }).waitFor(soon)
    await page.context().close()
  })

  it('a batch draws its counts of prey against what its rule holds, with the same as a table', async () => {
    const page = await stage.openPage(room.people.viewer, { path: room.path(`batches/${room.batch.id}`) })
    await page
      .getByRole('img', { name: /^Prey chart\. 6 rotifers per mL, .*: within the 5 to 15 to hold/ })
      .waitFor(soon)
    // The life line and the prey each have one.
    for (const fold of await page.getByText('The same as a table').all()) await fold.click()
    const row = page.getByRole('row').filter({ hasText: '5 to 7 in 3' }).first()
    await row.waitFor()
    expect(await row.getByRole('cell').nth(2).textContent()).toBe('6')
    await page.context().close()
  })

  it('a clutch says the colour its eggs should have, and which day of how many it is', async () => {
    const page = await stage.openPage(room.people.viewer, { path: room.path(`clutches/${room.clutch.id}`) })
    await page.getByText(/^Day \d+ of about \d+$/).waitFor(soon)
    await page.getByText(/^The eggs should look (orange|dark|eyed|silver eyes) today\.$/).waitFor()
    await page.context().close()
  })

  it('more lost than the book knew of is asked about, and the reason corrects the book', async () => {
    const page = await stage.openPage(room.people.caretaker, { path: room.path(`batches/${room.batch.id}`) })
    await page.getByRole('button', { name: 'A loss' }).click()
    await page.getByRole('textbox', { name: 'How many' }).fill('5000')
    await page.getByRole('button', { name: 'Record', exact: true }).click()
    const question = page.getByRole('alert').filter({ hasText: /^The book says \d+ in / })
    await question.waitFor(soon)
    const asked = await question.textContent()
    expect(asked?.match(/The book says/g)).toHaveLength(1)
    expect(asked).not.toContain('beyondBook')
    await page.getByLabel('Why were there more?').fill('Never counted at the hatch')
    await page.getByRole('button', { name: 'Record', exact: true }).click()
    const loss = page.getByRole('listitem').filter({ hasText: '5,000 larvae' })
    await loss
      .getByText(/more than the book said: Never counted at the hatch/)
      .first()
      .waitFor(soon)
    await page.context().close()
  })

  it('a culture that has ended keeps its curve, and has nothing left to slide or to do', async () => {
    const params = { roomId: room.roomId, cultureId: room.culture.id }
    const [culture] = await stage.world.ok(room.people.owner, 'listCultures', { params: { roomId: room.roomId } })
    await stage.world.ok(room.people.owner, 'endCulture', {
      params,
      body: { reason: 'It crashed', version: culture?.version ?? 1 },
    })
    const page = await stage.openPage(room.people.owner, { path: room.path(`cultures/${room.culture.id}`) })
    await page.getByRole('img', { name: /^Density chart/ }).waitFor(soon)
    await page.getByText('This culture has ended; its history stays.').waitFor()
    await page.getByRole('listitem').filter({ hasText: '180 per mL' }).first().waitFor(soon)
    expect(await page.getByRole('slider').count()).toBe(0)
    expect(await page.getByRole('button', { name: /^(End|Change|A count|Add a photo)$/ }).count()).toBe(0)
    await page.context().close()
  })
})
