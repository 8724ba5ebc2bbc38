import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { DESKTOP, PHONE } from '../support/browser.ts'
import { hasLoadedAhead, holdBack, openSheet, soon, tapDone, taskLine, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type Cable, layCable } from '../support/stage-cable.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom
let cable: Cable
let desk: Page
let phone: Page
/** Another device of the same person, in a cellar. */
let lonely: Page
const note = 'the third pump hums'

async function takeOut() {
  const line = desk.getByRole('listitem').filter({ hasText: 'sam-' })
  await line.getByRole('button', { name: /^Take out/ }).click()
  await line.getByRole('button', { name: /^Yes, take/ }).click()
  await line.waitFor({ state: 'detached', ...soon })
}
const notIn = (page: Page) => page.getByRole('heading', { name: 'You are not in Back room any more' })

describe('who is removed while they are in the room', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
    cable = await layCable(stage.port)
    desk = await stage.openPage(room.people.owner, { path: room.path('people'), device: DESKTOP })
    lonely = await stage.openPage(room.people.stand_in, {
      path: room.path('today'),
      device: PHONE,
      origin: cable.origin,
    })
    await hasLoadedAhead(lonely)
    cable.pull()
    await lonely
      .getByText(/no connection/)
      .first()
      .waitFor(soon)
    await tapDone(lonely, tasks.turnBottle)
    await lonely.getByText('1 waiting for network.').waitFor(soon)
    phone = await stage.openPage(room.people.stand_in, { path: room.path('today'), device: PHONE })
  })
  afterAll(async () => {
    await stage.close()
    await cable.close()
  })

  it('is told so at once, without a word of a lost connection, and sees nothing of the room any more', async () => {
    const sheet = await openSheet(phone, tasks.lookOver)
    await sheet.getByRole('textbox', { name: /note/i }).fill(note)
    await taskLine(lonely, tasks.turnBottle).getByText('waiting for network').waitFor(soon)
    await takeOut()
    await notIn(phone).waitFor(soon)
    expect(await phone.getByText(/no connection|turn over/i).count()).toBe(0)
    expect(await phone.getByRole('dialog').count()).toBe(0)
  })

  it('a tap that waited for the network is refused in words once it goes out, and books nothing', async () => {
    const letGo = await holdBack([lonely], /\/sign-off$/)
    cable.plugIn()
    await notIn(lonely).waitFor(soon)
    letGo()
    await lonely.getByText(/You are not in this room/).waitFor(soon)
    expect(await stage.world.database.prisma.signOff.count()).toBe(0)
  })

  it('invited back, they find what they had typed', async () => {
    await stage.world.database.prisma.membership.create({
      data: { roomId: room.roomId, userId: room.people.stand_in.userId, role: 'stand_in', joinedAt: new Date() },
    })
    await phone.reload()
    // The address still names the task, so that its sheet opens by itself.
    const sheet = phone.getByRole('dialog')
    await expect.poll(() => sheet.getByRole('textbox', { name: /note/i }).inputValue(), soon).toBe(note)
  })
})
