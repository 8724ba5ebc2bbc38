import { prepareClaim } from '@fryward/room'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { PHONE } from '../support/browser.ts'
import { soon, taskLine, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { morningZone } from '../support/stage-room.ts'

let stage: Stage
let page: Page

describe('a server that nobody owns yet', () => {
  beforeAll(async () => {
    stage = await openStage()
    page = await stage.openPage(null, { path: '/', device: { ...PHONE, timezoneId: morningZone() } })
  })
  afterAll(() => stage.close())

  it('asks for the one-time code and takes whoever has it as its owner', async () => {
    const actor = { kind: 'system', job: 'start' } as const
    const code = await prepareClaim({
      ctx: { database: stage.world.database, actor, now: new Date().toISOString() },
      kept: null,
    })
    await page.getByRole('heading', { name: 'Become the first owner' }).waitFor()
    await page.getByLabel('Your name').fill('Ada')
    await page.getByLabel('Email').fill('ada@fish.example')
    await page.getByRole('textbox', { name: 'Password' }).fill('a long enough password')
    await page.getByLabel('One-time code').fill('WRONG-CODE')
    await page.getByRole('button', { name: 'Make it mine' }).click()
    await page.getByRole('alert').filter({ hasText: /code/ }).waitFor()
    await page.getByLabel('One-time code').fill(code ?? '')
    await page.getByRole('button', { name: 'Make it mine' }).click()
    await page.waitForURL(/\/rooms/)
  })

  it('takes a time of day as it is typed, and shows it on 24 hours whatever the device’s habit', async () => {
    await page.goto(`${stage.origin}/rooms/new`)
    const lightsOn = page.getByLabel('Lights on')
    await lightsOn.fill('730')
    await lightsOn.blur()
    expect(await lightsOn.inputValue()).toBe('07:30')
    const lightsOff = page.getByLabel('Lights off')
    await lightsOff.fill('25')
    await page.getByLabel('Name of the room').fill('Garage')
    await page.getByText('A time of day, such as 7:30 or 19:30.').waitFor()
    await page.getByRole('button', { name: 'Next' }).click()
    await page.getByText(/^Lights on and lights off, as times of day/).waitFor()
    await lightsOff.fill('19.30')
    await page.getByRole('button', { name: 'Next' }).click()
    await page.getByRole('heading', { name: 'Its rounds' }).waitFor()
  })

  it('sets up a room in gallons, and its first list appears', async () => {
    await page.getByRole('button', { name: 'Back' }).click()
    expect(await page.getByLabel('Name of the room').inputValue()).toBe('Garage')
    await page.getByRole('radio', { name: /^US/ }).check()
    await page.getByRole('button', { name: 'Next' }).click()
    await page.getByLabel('Round 1: starts').fill('830')
    await page.getByRole('button', { name: 'Next' }).click()
    await page.getByRole('button', { name: 'Add a rotifer culture' }).click()
    await page.getByLabel('Volume').fill('4.2')
    await page.getByLabel('Density now').fill('63')
    await page.getByLabel('Name on the bottle').fill('Green bottle')
    await page.getByLabel('Strength from the label').fill('65')
    await page.getByRole('button', { name: 'Set up the room' }).click()
    await page.waitForURL(/\/today/)
    await taskLine(page, tasks.lookOver).waitFor(soon)
    // R1 was fed when it was set up, so its next feed is the evening's.
    await page.getByRole('tab', { name: /^Evening/ }).click()
    await taskLine(page, tasks.feed).waitFor(soon)
  })

  it('4.2 US gallons come back as 4.2, and are 15.9 L in the database', async () => {
    await page.getByRole('link', { name: 'R1' }).first().click()
    await page.getByRole('heading', { level: 1, name: /R1/ }).waitFor()
    await page
      .getByText(/^4\.2\s*gal$/)
      .first()
      .waitFor(soon)
    const [culture] = await stage.world.database.prisma.culture.findMany()
    expect(culture?.volumeL).toBeCloseTo(15.9, 2)
  })
})
