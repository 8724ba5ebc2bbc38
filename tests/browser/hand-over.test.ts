import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { DESKTOP } from '../support/browser.ts'
import { soon } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom
let desk: Page
let phone: Page
const worry = 'Air stone of R1 bubbles less than it did'

describe('handing over', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
    desk = await stage.openPage(room.people.caretaker, { path: room.path('hand-over'), device: DESKTOP })
    phone = await stage.openPage(room.people.stand_in, { path: room.path('hand-over') })
  })
  afterAll(() => stage.close())

  it('a note written at the desk is read on the phone of who comes next', async () => {
    await phone.getByRole('heading', { name: 'Notes' }).waitFor(soon)
    await desk.getByLabel('What should they know?').fill('The brush is in the left drawer now')
    await desk.getByRole('button', { name: 'Write the note' }).click()
    const note = phone.getByRole('listitem').filter({ hasText: 'The brush is in the left drawer now' })
    await note.getByText(/Carla/).waitFor(soon)
    expect(await desk.getByLabel('What should they know?').inputValue()).toBe('')
  })

  it('a worry about a culture stands on top until somebody says that it is over', async () => {
    await desk.getByLabel('What should they know?').fill(worry)
    await desk.getByLabel('About').selectOption({ label: 'R1' })
    await desk.getByRole('checkbox', { name: /^A worry/ }).check()
    await desk.getByRole('button', { name: 'Write the worry' }).click()
    const settle = phone.getByRole('button', { name: `It is over: ${worry}` })
    await settle.waitFor(soon)
    // Said once on the page, among neither the notes nor the other worries a second time.
    expect(await phone.getByText(worry).count()).toBe(1)
    await settle.click()
    await settle.waitFor({ state: 'detached', ...soon })
    const note = desk.getByRole('listitem').filter({ hasText: worry })
    await note.getByText(/over .*Sam/).waitFor(soon)
    expect(await desk.getByRole('button', { name: /^It is over/ }).count()).toBe(0)
  })

  it('a viewer reads both, and finds no field to write in', async () => {
    const page = await stage.openPage(room.people.viewer, { path: room.path('hand-over') })
    await page.getByText('The brush is in the left drawer now').waitFor(soon)
    expect(await page.getByRole('textbox').count()).toBe(0)
    await page.context().close()
  })
})
