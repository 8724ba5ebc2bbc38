import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { soon, tapDone, taskLine, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type Cable, layCable } from '../support/stage-cable.ts'
import { type LivedInRoom, openLivedInRoom, todaysTasks } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom
let cable: Cable

describe('a phone that loses the network', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
    cable = await layCable(stage.port)
  })
  afterAll(async () => {
    await stage.close()
    await cable.close()
  })

  it('says since when it knows nothing new, keeps the list, and catches up by itself', async () => {
    const text = tasks.startBackup
    const page = await stage.openPage(room.people.caretaker, { path: room.path('today'), origin: cable.origin })
    await taskLine(page, text).waitFor()
    cable.pull()
    const stale = page.getByText(/As of \d\d:\d\d, no connection/)
    await stale.waitFor(soon)
    expect(await taskLine(page, text).isVisible()).toBe(true)

    const task = (await todaysTasks(stage, room)).find((one) => one.ruleId === 'rotifer-backup-wanted')
    await stage.world.ok(room.people.owner, 'signOffTask', {
      params: { roomId: room.roomId, taskId: task?.id ?? '' },
      body: { values: {} },
      key: randomUUID(),
    })
    cable.plugIn()
    await taskLine(page, text)
      .getByText(/Started .*The owner/)
      .waitFor({ timeout: 30_000 })
    await stale.waitFor({ state: 'detached', ...soon })
  })

  it('a tap without a network books nothing and says so; the next one books once', async () => {
    const text = tasks.turnBottle
    const page = await stage.openPage(room.people.caretaker, { path: room.path('today'), origin: cable.origin })
    await taskLine(page, text).waitFor()
    cable.pull()
    await page
      .getByText(/no connection/)
      .first()
      .waitFor(soon)
    await tapDone(page, text)
    await page
      .getByRole('status')
      .getByText(/connection|network|reach/i)
      .last()
      .waitFor(soon)
    cable.plugIn()
    await page.getByText(/As of \d\d:\d\d, no connection/).waitFor({ state: 'detached', timeout: 30_000 })
    await tapDone(page, text)
    await taskLine(page, text).getByText(/Carla/).waitFor(soon)
    const booked = await stage.world.database.prisma.signOff.count({ where: { task: { ruleId: 'concentrate-shake' } } })
    expect(booked).toBe(1)
  })
})
