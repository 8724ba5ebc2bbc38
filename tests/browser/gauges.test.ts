import { makeRoomForReadings } from '@fryward/room'
import type { Gauge } from '@fryward/shared'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { tickNow } from '../scheduler/room-clock.ts'
import { soon } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

const minuteMs = 60_000
const hourMs = 60 * minuteMs
// As many as a post takes well.
const mostInPost = 5000
const rackDevices = 19

let stage: Stage
let room: LivedInRoom
let heated: { gauge: Gauge; token: string }
const params = () => ({ roomId: room.roomId })

const device = async (name: string, subjectId: string, limits = {}) => {
  const { owner } = room.people
  const made = await stage.world.ok(owner, 'createDevice', { params: params(), body: { name } })
  const gauge = await stage.world.ok(owner, 'createGauge', {
    params: { ...params(), deviceId: made.device.id },
    body: { key: 't1', quantity: 'temperature', subjectId, ...limits },
  })
  return { gauge, token: made.token }
}

/** Over HTTP, as a device does. */
async function post(token: string, readings: { gauge: string; at: string; value: number }[]): Promise<number> {
  const answer = await fetch(`${stage.origin}/api/v1/readings`, {
    ...{ method: 'POST', body: JSON.stringify(readings) },
    headers: { authorization: `Bearer ${token}`, 'content-type': 'application/json' },
  })
  const { kept } = (await answer.json()) as { kept: number }
  return kept
}

/** The last 24 hours, each reading so many seconds after the one before; eight hours ago the heater sticks, where it does. */
async function aDay(token: string, everyS: number, isStuck: boolean): Promise<number> {
  const to = Date.now()
  const number = 86_400 / everyS
  let kept = 0
  for (let from = 0; from < number; from += mostInPost)
    kept += await post(
      token,
      Array.from({ length: Math.min(mostInPost, number - from) }, (_, i) => {
        const at = to - (number - 1 - from - i) * everyS * 1000
        const warmed = isStuck ? Math.min(4, Math.max(0, (at - (to - 8 * hourMs)) / (0.5 * hourMs))) : 0
        return { gauge: 't1', at: new Date(at).toISOString(), value: 27 + warmed + (i % 2) / 10 }
      }),
    )
  return kept
}

const nights = async (page: Page) => {
  const list = page.locator('section').filter({ has: page.getByRole('heading', { name: 'Nights ahead' }) })
  await list.getByRole('listitem').first().waitFor(soon)
  return list.getByRole('listitem').allTextContents()
}
const openClutch = () => stage.openPage(room.people.caretaker, { path: room.path(`clutches/${room.clutch.id}`) })
const tick = () => {
  stage.world.clock.set(new Date().toISOString())
  return tickNow(stage.world)
}

describe('gauges', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
    await makeRoomForReadings(stage.world.contextOf(room.people.owner))
    heated = await device('Rack', room.pair.tankId, { low: 24, high: 28, forMinutes: 10 })
  })
  afterAll(() => stage.close())

  it('a file of readings is looked at line by line, kept, and taken back; a broker is named, and what is wrong with it said', async () => {
    const page = await stage.openPage(room.people.owner, { path: room.path('devices') })
    // The card has its height by then: what still moves under a tap takes none.
    await page.getByText('Nothing was read in this time.').first().waitFor(soon)
    await page.getByRole('button', { name: 'Bring readings in: t1' }).first().click(soon)
    const day = new Date(Date.now() - 40 * 24 * hourMs).toISOString().slice(0, 10)
    const buffer = Buffer.from(`date,time,value\n${day},07:30,25.4\n${day},07:31,25.5\n${day},07:32,warm\n`)
    await page.getByLabel('Choose a file').setInputFiles({ name: 'logger.csv', mimeType: 'text/csv', buffer })
    await page.getByText('2 of 3 lines can be kept.').waitFor(soon)
    await page.getByText('"warm" is no number.').first().waitFor()

    await page.getByRole('button', { name: 'Keep 2 readings' }).click()
    await page.getByText('2 kept.').waitFor(soon)
    await page.getByRole('button', { name: 'Take them all back' }).click()
    await page.getByText('Taken back: 2 struck out.').waitFor(soon)

    await page.getByRole('button', { name: 'Name a broker' }).click()
    await page.getByLabel('Address').fill('http://broker.lan')
    await page.getByRole('button', { name: 'Save the broker' }).click()
    await page
      .getByText(/mqtt:\/\/broker\.lan/)
      .first()
      .waitFor(soon)

    await page.getByLabel('Address').fill('mqtt://broker.lan:1883')
    await page.getByRole('button', { name: 'Save the broker' }).click()
    await page.getByText('Not connected to mqtt://broker.lan:1883').waitFor(soon)
    await page.context().close()
  })

  it('a heater that stuck at night is one alarm, in the hand of whoever says so, on the chart and in the hatch nights', async () => {
    const clutch = await openClutch()
    const before = await nights(clutch)
    await clutch.context().close()
    const others = await Promise.all(
      Array.from({ length: rackDevices }, (_, i) => device(`Shelf ${i + 1}`, room.larvalTank.id)),
    )
    const kept = await Promise.all([aDay(heated.token, 1, true), ...others.map(({ token }) => aDay(token, 60, false))])
    expect(kept).toEqual([86_400, ...others.map(() => 1440)])
    await tick()
    await tick()

    const page = await stage.openPage(room.people.caretaker, { path: room.path('today') })
    const alarm = page.getByText(/^Temperature in .* is too high: 31\.\d °C, and should be at most 28 °C/)
    await alarm.waitFor(soon)
    expect(await alarm.count()).toBe(1)

    await page.getByRole('button', { name: /^I have it: Temperature/ }).click()
    await page.getByText('Carla has it.').waitFor(soon)
    await tick()
    const standing = await stage.world.ok(room.people.viewer, 'listAlarms', { params: params() })
    expect(standing.map(({ kind, acknowledgedByName }) => [kind, acknowledgedByName])).toEqual([['too_high', 'Carla']])

    await page.goto(`${stage.origin}${room.path(`tanks/${room.pair.tankId}`)}`)
    await page.getByRole('img', { name: /^Temperature in .* between 27 °C and 31\.1 °C\.$/ }).waitFor(soon)

    await page.locator('summary').filter({ hasText: 'Alarm' }).first().click()
    await page
      .getByText(/too high, /)
      .first()
      .waitFor(soon)

    await page.context().close()

    const after = await openClutch()
    expect(await nights(after)).not.toEqual(before)
    await after.context().close()
  })
})
