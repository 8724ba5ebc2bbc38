import { randomUUID } from 'node:crypto'
import type { Task, TaskField } from '@fryward/shared'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { tickNow } from '../scheduler/room-clock.ts'
import { DESKTOP } from '../support/browser.ts'
import { openSheet, soon, taskLine, tasks } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { openRoom, type Person } from '../support/world.ts'

const date = '2026-03-10'
const dayBefore = '2026-03-09'
const rounds = [
  { id: 'morning', name: 'Morning', at: '07:00' },
  { id: 'midday', name: 'Midday', at: '12:30' },
  { id: 'evening', name: 'Evening', at: '17:00' },
]
const note = 'The frozen food is in the upper drawer now'
const reason = 'No time in this round'

let stage: Stage
let roomId: string
let owner: Person
let carla: Page
let sam: Page
let desk: Page

const path = (page: string) => `/rooms/${roomId}/${page}`
const at = async (time: string, on = date) => {
  stage.world.clock.set(`${on}T${time}:00.000Z`)
  await tickNow(stage.world)
}
const today = async (on = date): Promise<Task[]> =>
  (await stage.world.ok(owner, 'getDay', { params: { roomId, date: on } })).tasks
const openIn = async (roundId: string) =>
  (await today()).filter((task) => task.roundId === roundId && task.state === 'open').map(({ ruleId }) => ruleId)

/** A pair, and larvae of three days on one culture, in a room that its owner kept by its list the day before. */
async function keptRoom(): Promise<{ carla: Person; sam: Person }> {
  const { world } = stage
  const made = await openRoom(world, { timeZone: 'UTC', rounds })
  owner = made.owner
  roomId = made.room.id
  const params = { roomId }
  const [pairTank, larvalTank] = await world.ok(owner, 'listTanks', { params })
  const [culture] = await world.ok(owner, 'listCultures', { params })
  const species = 'amphiprion-ocellaris'
  await world.ok(owner, 'createPair', { params, body: { name: 'Copper pair', species, tankId: pairTank!.id } })
  const hatchedOn = '2026-03-07'
  const body = { tankId: larvalTank!.id, species, hatchedOn, larvae: 200 }
  const batch = await world.ok(owner, 'createLarvalBatch', { params, body })
  const link = { batchId: batch.id, cultureId: culture!.id, fromOn: hatchedOn }
  await world.ok(owner, 'createFeedLink', { params, body: link })
  for (const round of rounds) {
    await at(round.at, dayBefore)
    await keepRound(dayBefore, round.id)
  }
  return {
    carla: await world.person('Carla', { roomId, role: 'caretaker' }),
    sam: await world.person('Sam', { roomId, role: 'stand_in' }),
  }
}

async function keepRound(day: string, roundId: string): Promise<void> {
  for (const task of await today(day)) {
    if (task.roundId !== roundId || task.state !== 'open') continue
    stage.world.clock.advanceMinutes(1)
    const values = Object.fromEntries(asked(task).map((field) => [field.name, plainValue(field)]))
    const body = { values, confirmed: task.fields.map(({ name }) => name) }
    await stage.world.ok(owner, 'signOffTask', { params: { roomId, taskId: task.id }, body, key: randomUUID() })
  }
}

const asked = ({ fields }: Task) => fields.filter(({ isRequired }) => isRequired)

/** A quiet day: nothing dead, nothing found, as many rotifers as usual. */
function plainValue(field: TaskField): unknown {
  if (field.type === 'count') return { animals: samples(field), volumeMl: field.volumeMl }
  if (field.type === 'number') return field.minimum === 0 ? 0 : field.likelyMinimum
  if (field.type === 'choice') return field.choices[0]!.value
  return field.type === 'yes_no' ? false : 'seen'
}
const samples = (field: TaskField & { type: 'count' }) =>
  Array.from({ length: field.replicates }, () =>
    Math.round((field.usual ?? (field.withEggs ? 120 : 6)) * field.volumeMl),
  )

/** A round as its list asks for it, from the top, each task by its own button, but for one that is passed over. */
async function walk(page: Page, passedOver = 'none'): Promise<void> {
  const list = page.getByRole('tabpanel')
  const buttons = list
    .getByRole('button', { name: /^(Done|Record|Read): / })
    .and(page.locator(`:not([aria-label*="${passedOver}"])`))
  // A line whose amount a count has changed has another name while its own tap is still on its way.
  const hasSettled = () =>
    list
      .locator('[aria-busy="true"]')
      .first()
      .waitFor({ state: 'detached', ...soon })
  for (await hasSettled(); (await buttons.count()) > 0; await hasSettled()) {
    stage.world.clock.advanceMinutes(1)
    const label = (await buttons.first().getAttribute('aria-label'))!
    await buttons.first().click()
    if (!label.startsWith('Done')) await fill(page)
    await list.getByRole('button', { name: label, exact: true }).waitFor({ state: 'detached', ...soon })
  }
}

async function fill(page: Page): Promise<void> {
  const sheet = page.getByRole('dialog')
  await sheet.waitFor(soon)
  const id = new URL(page.url()).searchParams.get('task')
  const task = (await today()).find((each) => each.id === id)
  if (!task) throw new Error('The sheet is of no task of today')
  for (const field of asked(task)) await type(sheet, field)
  await sheet.getByRole('button', { name: 'Done', exact: true }).click()
  await sheet.waitFor({ state: 'detached', ...soon })
}

async function type(sheet: Locator, field: TaskField): Promise<void> {
  if (field.type === 'count')
    for (const [index, animals] of samples(field).entries())
      await sheet.getByLabel(`Sample ${index + 1}`).fill(`${animals}`)
  if (field.type === 'number') await sheet.getByLabel(field.label).fill(`${plainValue(field)}`)
  const group = sheet.getByRole('group', { name: field.label })
  if (field.type === 'choice') await group.getByRole('radio', { name: field.choices[0]!.label, exact: true }).check()
  if (field.type === 'yes_no') await group.getByRole('radio', { name: 'No' }).check()
}

describe('a day of three people', () => {
  beforeAll(async () => {
    stage = await openStage({ from: '2026-03-08T12:00:00.000Z' })
    const people = await keptRoom()
    await at('07:05')
    carla = await stage.openPage(people.carla, { path: path('today') })
    sam = await stage.openPage(people.sam, { path: path('hand-over') })
    desk = await stage.openPage(owner, { path: path('today'), device: DESKTOP })
  })
  afterAll(() => stage.close())

  it('in the morning the caretaker does what the list says, but for one look, and writes a note', async () => {
    await carla.getByRole('button', { name: 'I have it' }).click()
    await walk(carla, 'Look over air')
    expect(await openIn('morning')).toEqual(['room-equipment'])
    await desk.getByText(/^On duty: Carla/).waitFor(soon)
    await desk.getByText(/seen to: Carla/).waitFor(soon)
    await carla.getByRole('link', { name: 'Hand-over' }).click()
    await carla.getByLabel('What should they know?').fill(note)
    await carla.getByRole('button', { name: 'Write the note' }).click()
    await carla.getByRole('listitem').filter({ hasText: note }).waitFor(soon)
  })

  it('at midday the stand-in reads it first, sees what is late, and says why it has to wait', async () => {
    await at('12:35')
    await sam.reload()
    await sam.getByRole('listitem').filter({ hasText: note }).getByText(/Carla/).waitFor(soon)
    await sam
      .getByRole('listitem')
      .filter({ hasText: 'Carla' })
      .getByText(/\d+ tasks done/)
      .waitFor(soon)
    await sam.getByRole('button', { name: 'I have read this' }).click()
    await sam.getByText('Nothing new was written.').waitFor(soon)
    await sam.getByRole('link', { name: 'Today' }).click()
    await sam.getByRole('heading', { name: '1 late' }).waitFor(soon)
    const sheet = await openSheet(sam, tasks.lookOver)
    await sheet.getByRole('button', { name: /^Skip/ }).click()
    await sheet.getByRole('radio', { name: reason }).check()
    await sheet.getByRole('button', { name: 'Skip this' }).click()
    await sam.getByRole('heading', { name: '1 late' }).waitFor({ state: 'detached', ...soon })
    await sam.getByRole('button', { name: 'I take over' }).click()
    await walk(sam)
    expect(await openIn('midday')).toEqual([])
  })

  it('by the evening the list is empty', async () => {
    await at('17:05')
    await sam.getByRole('tab', { name: /^Evening/ }).click()
    await walk(sam)
    expect(await today().then((all) => all.filter(({ state }) => state === 'open'))).toEqual([])
    await sam.getByText('Evening: all seen to.').waitFor(soon)
  })

  it('the owner at the desk reads who did what, and what was left with its reason', async () => {
    await at('20:00')
    await desk.getByText(/^On duty: Sam/).waitFor(soon)
    await desk.getByText(/seen to: (Carla|Sam) \d+, (Carla|Sam) \d+/).waitFor(soon)
    await desk.getByRole('tab', { name: /^Morning/ }).click()
    await taskLine(desk, tasks.lookOver).getByText(`Skipped by Sam: ${reason}`).waitFor(soon)
    await desk.getByRole('link', { name: 'Hand-over' }).click()
    const skipped = desk.getByRole('listitem').filter({ hasText: 'Look over air' })
    await skipped.getByText(new RegExp(`Sam: ${reason}`)).waitFor(soon)
    for (const name of ['Carla', 'Sam'])
      await desk
        .getByRole('listitem')
        .filter({ hasText: name })
        .getByText(/\d+ tasks? done/)
        .waitFor(soon)
  })
})
