import { randomUUID } from 'node:crypto'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { hasLoadedAhead, openSheet, soon, tapDone, taskLine, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type Cable, layCable } from '../support/stage-cable.ts'
import { type LivedInRoom, openLivedInRoom, todaysTasks } from '../support/stage-room.ts'

/** What the page takes for no difference between its clock and the server's: the header that tells it counts whole seconds. */
const clockNoiseMs = 2_000

let stage: Stage
let room: LivedInRoom
let cable: Cable

describe('a phone that loses the network', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
    cable = await layCable(stage.port)
  })
  afterEach(() => cable.plugIn())
  afterAll(async () => {
    await stage.close()
    await cable.close()
  })

  it('says since when it knows nothing new, keeps the list, and catches up by itself', async () => {
    const text = tasks.turnBottle
    const page = await stage.openPage(room.people.caretaker, { path: room.path('today'), origin: cable.origin })
    await taskLine(page, text).waitFor()
    cable.pull()
    const stale = page.getByText(/As of \d\d:\d\d, no connection/)
    await stale.waitFor(soon)
    expect(await taskLine(page, text).isVisible()).toBe(true)

    const task = (await todaysTasks(stage, room)).find((one) => one.ruleId === 'concentrate-shake')
    await stage.world.ok(room.people.owner, 'signOffTask', {
      params: { roomId: room.roomId, taskId: task?.id ?? '' },
      body: { values: {} },
      key: randomUUID(),
    })
    cable.plugIn()
    await taskLine(page, text)
      .getByText(/Shaken .*The owner/)
      .waitFor(soon)
    await stale.waitFor({ state: 'detached', ...soon })
  })

  it('what is tapped without a network waits, is counted at the foot, and is booked once with the time of the tap', async () => {
    const page = await stage.openPage(room.people.caretaker, { path: room.path('today'), origin: cable.origin })
    await hasLoadedAhead(page)
    cable.pull()
    await page
      .getByText(/no connection/)
      .first()
      .waitFor(soon)
    const tappedMs = Date.now()
    await tapDone(page, tasks.lightTimers)
    await page.getByText('1 waiting for network.').waitFor(soon)
    await taskLine(page, tasks.lightTimers).getByText('waiting for network').waitFor(soon)
    const waitingMs = Date.now()
    cable.plugIn()
    await taskLine(page, tasks.lightTimers).getByText(/Carla/).waitFor(soon)
    await page.getByText(/waiting for network/).waitFor({ state: 'detached', ...soon })
    const booked = await stage.world.database.prisma.signOff.findMany({
      where: { task: { ruleId: 'room-day-length' } },
    })
    expect(booked).toHaveLength(1)
    const doneMs = booked[0]?.doneAt.getTime()
    expect(doneMs).toBeGreaterThanOrEqual(tappedMs - clockNoiseMs)
    expect(doneMs).toBeLessThanOrEqual(waitingMs + clockNoiseMs)
  })

  it('a sheet may be left while it waits; when it is refused in the end, what was typed is still there', async () => {
    const page = await stage.openPage(room.people.caretaker, { path: room.path('today'), origin: cable.origin })
    const sheet = await openSheet(page, tasks.lookOver)
    await hasLoadedAhead(page)
    cable.pull()
    const note = 'the third pump hums'
    await sheet.getByRole('textbox', { name: /note/i }).fill(note)
    await sheet.getByRole('button', { name: 'Done', exact: true }).click()
    await sheet.getByRole('button', { name: 'Go on with the round' }).click()
    await sheet.waitFor({ state: 'detached' })
    await page.getByText('1 waiting for network.').waitFor(soon)
    const task = (await todaysTasks(stage, room)).find((one) => one.ruleId === 'room-equipment')
    await stage.world.ok(room.people.owner, 'signOffTask', {
      params: { roomId: room.roomId, taskId: task?.id ?? '' },
      body: { values: {} },
      key: randomUUID(),
    })
    cable.plugIn()
    await page.getByRole('button', { name: /^Open: / }).waitFor(soon)
    // Opened before the list has caught up it is still the form, which is told the same once it is sent.
    await taskLine(page, tasks.lookOver)
      .getByText(/The owner/)
      .waitFor(soon)
    await page.getByRole('button', { name: /^Open: / }).click(soon)
    await sheet.getByRole('button', { name: /I did it too/ }).click()
    expect(await sheet.getByRole('textbox', { name: /note/i }).inputValue()).toBe(note)
  })
})
