import { keepReadingsHere, planRoomFood, postReadings, thinkHere, watchGauges } from '@fryward/room'
import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { findAccessibilityViolations } from '../support/accessibility.ts'
import { DESKTOP, PHONE } from '../support/browser.ts'
import { watchRequests } from '../support/browser-quiet.mjs'
import { openSheet, soon, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'
import { findTooWideZoomed } from '../support/zoomed.ts'

let stage: Stage
let room: LivedInRoom
let link: string
let groupId: string

/** Pages of a room, with something in each. */
const roomPages = (): Record<string, string> => ({
  today: 'today',
  tomorrow: 'today?date=tomorrow',
  'hand-over': 'hand-over',
  food: 'food',
  'who eats': 'who-eats',
  room: 'room',
  culture: `cultures/${room.culture.id}`,
  tank: `tanks/${room.larvalTank.id}`,
  pair: `pairs/${room.pair.id}`,
  clutch: `clutches/${room.clutch.id}`,
  batch: `batches/${room.batch.id}`,
  group: `groups/${groupId}`,
  survival: 'survival',
  pedigree: 'pedigree',
  'no such page of the room': 'nowhere',
  devices: 'devices',
  alarms: 'alarms',
  records: 'records',
  rules: 'rules',
  people: 'people',
  account: 'account',
  settings: 'settings',
  add: 'add',
  more: 'more',
})
const strangersPages = () => ({
  'no such page': '/nowhere',
  'sign-in': '/sign-in',
  'forgotten password': '/sign-in?forgot=1',
  'new password': '/new-password/a-link-that-was-used',
  claim: '/claim',
  join: new URL(link, stage.origin).pathname,
})

/** Nothing is loading any more, and there is a heading to go by. */
async function loaded(page: Page, quiet: () => Promise<void>): Promise<void> {
  await page.getByRole('heading', { level: 1 }).waitFor(soon)
  await quiet()
  await expect.poll(() => page.getByText('Loading', { exact: true }).count(), soon).toBe(0)
  // A page that broke is in good order as far as rules go.
  expect(await page.getByRole('heading', { name: 'This page stopped' }).count(), page.url()).toBe(0)
}

const sizes = { phone: PHONE.viewport, desktop: DESKTOP.viewport }

/** What is wrong with the page as it stands on either size of screen, the size before each; it is left on a phone's. */
async function findViolations(page: Page, isThere: () => Promise<unknown> = async () => {}): Promise<string[]> {
  const found: string[] = []
  for (const [size, viewport] of Object.entries(sizes)) {
    await page.setViewportSize(viewport)
    await isThere()
    found.push(...(await findAccessibilityViolations(page)).map((violation) => `on a ${size}: ${violation}`))
    found.push(...(await findTooWideZoomed(page)).map((line) => `on a ${size}: ${line}`))
  }
  await page.setViewportSize(sizes.phone)
  return found
}

/** Violations page by page, with the name of the page before each. */
async function look(page: Page, pages: Record<string, string>): Promise<string[]> {
  const found: string[] = []
  const quiet = watchRequests(page)
  for (const [name, path] of Object.entries(pages)) {
    await page.goto(`${stage.origin}${path}`)
    // A wide window shows more, and asks for it.
    const violations = await findViolations(page, () => loaded(page, quiet))
    found.push(...violations.map((violation) => `${name}: ${violation}`))
  }
  return found
}

/** One photo on the culture, added as a person adds it. */
async function addPhoto(): Promise<void> {
  const page = await stage.openPage(room.people.owner, { path: room.path(`cultures/${room.culture.id}`) })
  const buffer = await sharp({ create: { width: 64, height: 48, channels: 3, background: '#3a7d44' } })
    .jpeg()
    .toBuffer()
  await page
    .getByLabel(/^Add a photo/)
    .first()
    .setInputFiles({ name: 'r1.jpg', mimeType: 'image/jpeg', buffer })
  await page.getByRole('button', { name: 'Send the photo' }).click()
  await page.getByRole('button', { name: /^Photo:/ }).waitFor(soon)
  await page.context().close()
}

/** A gauge in the larval tank, above its limits for an hour: a chart, and an alarm on Today. */
async function addGauge(): Promise<void> {
  const { world } = stage
  const params = { roomId: room.roomId }
  const { device } = await world.ok(room.people.owner, 'createDevice', { params, body: { name: 'Rack' } })
  const gauge = { key: 't1', quantity: 'temperature' as const, subjectId: room.larvalTank.id, low: 24, high: 28 }
  await world.ok(room.people.owner, 'createGauge', { params: { ...params, deviceId: device.id }, body: gauge })
  const now = new Date()
  const readings = Array.from({ length: 12 }, (_, index) => ({
    ...{ gauge: 't1', value: 29 + index / 10, at: new Date(now.getTime() - index * 300_000).toISOString() },
  }))
  const actor = { kind: 'device' as const, roomId: room.roomId, deviceId: device.id, name: device.name }
  const ctx = { database: world.database, actor, now: now.toISOString() }
  const sent = { type: 'application/json', bytes: Buffer.from(JSON.stringify(readings)) }
  await postReadings({ ctx, keeper: keepReadingsHere(world.database), ...sent })
  await watchGauges({ ...ctx, actor: { kind: 'system', job: 'scheduler' } })
}

describe('WCAG 2.2 A and AA, in every look, on a phone and on a desktop', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
    const made = await stage.world.ok(room.people.owner, 'createInvitation', {
      params: { roomId: room.roomId },
      body: { role: 'caretaker' },
    })
    link = made.link
    const settledOn = new Date(Date.now() - 24 * 86_400_000).toISOString().slice(0, 10)
    const group = await stage.world.ok(room.people.owner, 'createJuvenileGroup', {
      params: { roomId: room.roomId },
      body: { tankId: room.larvalTank.id, species: 'amphiprion-ocellaris', settledOn, number: 12 },
    })
    groupId = group.id
    await addPhoto()
    await addGauge()
    const ctx = {
      database: stage.world.database,
      actor: { kind: 'system', job: 'food' },
      now: new Date().toISOString(),
    } as const
    await planRoomFood({ ctx, roomId: room.roomId, thinker: thinkHere })
  })
  afterAll(() => stage.close())

  it('holds on every page of a room', async () => {
    const page = await stage.openPage(room.people.owner, { path: '/rooms' })
    const paths = Object.entries(roomPages()).map(([name, path]) => [name, room.path(path)])
    expect(await look(page, { rooms: '/rooms?choose=1', wizard: '/rooms/new', ...Object.fromEntries(paths) })).toEqual(
      [],
    )
    await page.context().close()
  })

  it('holds on an open sheet with its why, its question and its skip', async () => {
    const page = await stage.openPage(room.people.caretaker, { path: room.path('today') })
    const sheet = await openSheet(page, tasks.count)
    await sheet.getByLabel('Sample 1').fill('900')
    expect(await findViolations(page)).toEqual([])
    await sheet.getByRole('button', { name: 'Done', exact: true }).click()
    await sheet.getByText('Is this right?').waitFor()
    expect(await findViolations(page)).toEqual([])
    await sheet.getByRole('button', { name: 'Look at it again' }).click()
    await sheet.getByRole('button', { name: /^Skip/ }).click()
    expect(await findViolations(page)).toEqual([])
    await page.context().close()
  })

  it('holds on a photo in full, an open record and an open fold of the table', async () => {
    const path = room.path(`cultures/${room.culture.id}`)
    const page = await stage.openPage(room.people.owner, { path })
    await loaded(page, watchRequests(page))
    await page
      .getByRole('button', { name: /^More: / })
      .first()
      .click()
    await page.getByRole('button', { name: /^Strike out/ }).click()
    await page.getByText('The same as a table').click()
    expect(await findViolations(page)).toEqual([])
    await page.getByRole('button', { name: /^Photo:/ }).click()
    const dialog = page.getByRole('dialog')
    await dialog.getByRole('button', { name: 'Take it off' }).click()
    await dialog.getByText('Take this photo off the record?').waitFor()
    expect(await findViolations(page)).toEqual([])
    await page.context().close()
  })

  it('holds on what a rule would change tomorrow', async () => {
    const page = await stage.openPage(room.people.owner, { path: room.path('rules') })
    const rule = page.getByRole('article', { name: 'Feed the rotifers' })
    await rule.getByRole('textbox', { name: /cells a rotifer a day/ }).fill('150000')
    await rule.getByRole('button', { name: 'See what tomorrow would change' }).click()
    await rule.getByRole('button', { name: 'Save the rule' }).waitFor(soon)
    expect(await findViolations(page)).toEqual([])
    await page.context().close()
  })

  it('holds on every step of setting up a room', async () => {
    const page = await stage.openPage(room.people.owner, { path: '/rooms/new' })
    await page.getByLabel('Name of the room').fill('Garage')
    await page.getByLabel('Lights on').fill('25')
    await page.getByLabel('Lights on').blur()
    expect(await findViolations(page)).toEqual([])
    await page.getByLabel('Lights on').fill('8')
    await page.getByRole('button', { name: 'Next' }).click()
    await page.getByRole('heading', { name: 'Its rounds' }).waitFor()
    expect(await findViolations(page)).toEqual([])
    await page.getByRole('button', { name: 'Next' }).click()
    await page.getByRole('button', { name: 'Add a rotifer culture' }).click()
    await page.getByRole('button', { name: 'Add a tank' }).click()
    expect(await findViolations(page)).toEqual([])
    await page.context().close()
  })

  it('holds on the pages before a room', async () => {
    const page = await stage.openPage(null, { path: '/sign-in' })
    expect(await look(page, strangersPages())).toEqual([])
    await page.context().close()
  })
})
