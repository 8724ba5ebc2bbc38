import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { soon } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom

describe('what survived', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
    await stage.world.ok(room.people.owner, 'recordFact', {
      params: { roomId: room.roomId },
      body: { kind: 'count', subjectId: room.batch.id, data: { of: 'larvae', animals: [150], dilution: 1 } },
    })
  })
  afterAll(() => stage.close())

  it('is read clutch by clutch, compared, taken home as a file, and followed to the life line of a clutch', async () => {
    const page = await stage.openPage(room.people.owner, { path: room.path('survival') })
    const hatched = page.getByRole('article').filter({ hasText: 'Hatched' }).last()
    await hatched.getByText('200', { exact: true }).waitFor(soon)
    await page.getByText('There is one group only.').waitFor(soon)
    await page.getByRole('radio', { name: 'Species' }).check()
    await page.getByRole('img', { name: /^Survival curves\./ }).waitFor(soon)
    const figures = page.getByRole('region', { name: 'The groups in figures' }).getByRole('row').nth(1)
    await figures.getByText(/ocellaris clownfish/).waitFor(soon)
    // 200 hatched and 150 counted.
    const cells = await figures.getByRole('cell').allTextContents()
    expect(cells).toMatchObject([
      expect.stringMatching(/^75% \(69 to 81%\) on day \d$/),
      '1',
      '200',
      '50',
      'not reached',
    ])

    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: 'Download for a spreadsheet' }).click(),
    ])
    expect(file.suggestedFilename()).toMatch(/^survival-\d{4}-\d{2}-\d{2}\.csv$/)

    await hatched.getByRole('link').first().click()
    await page.getByRole('heading', { name: 'Life line' }).waitFor(soon)
    await page.getByRole('img', { name: /^Life line\. .+ 150 in the room now\.$/ }).waitFor(soon)
    await page.getByText('The same as a table').first().click()
    await page.getByRole('row').filter({ hasText: 'counted: 150' }).waitFor()
    await page.context().close()
  })
})
