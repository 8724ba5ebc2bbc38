// Every page and state: who looks, where, and what is done before the picture is taken.

const jsonProblem = (status, body) => ({ status, contentType: 'application/problem+json', body: JSON.stringify(body) })
const main = (page) => page.getByRole('main')

async function openSheet(page, task) {
  await page.goto(`${new URL(page.url()).origin}${new URL(page.url()).pathname}?task=${task.id}`)
  await page.getByRole('dialog').getByRole('region', { name: /^Why/ }).waitFor()
}

async function typeCount(page, animals) {
  for (const box of await page
    .getByRole('dialog')
    .getByLabel(/^(Sample|Number) \d/)
    .all())
    await box.fill(String(animals))
}

/** Animals in one sample that are half as many again as is likely, but not more than can be. */
function improbableOf({ fields }) {
  const { likelyMaximum, maximum, volumeMl, unit } = fields.find(({ type }) => type === 'count')
  return Math.ceil(Math.min(likelyMaximum * 1.5, maximum) * (unit === 'per_L' ? volumeMl / 1000 : volumeMl))
}

const pressDone = (page) => page.getByRole('dialog').getByRole('button', { name: 'Done', exact: true }).click()
const scroll = (screens) => (page) =>
  page.evaluate((share) => window.scrollTo(0, window.innerHeight * share), screens * 0.9)
const block = (address, answer) => (page) => page.route(address, answer)
const days = /\/api\/v1\/rooms\/[^/]+\/days\//

/** The room's own plan, with its first clutch as likely as not to hatch tonight and a worry in ten days. */
async function hatchingTonight(route) {
  const answer = await route.fetch()
  const view = await answer.json()
  const { outlook } = view.plan ?? {}
  const clutch = outlook?.eaters.find(({ kind }) => kind === 'clutch')
  if (clutch) {
    clutch.nights = [{ date: outlook.days[0].date, probability: 0.62 }]
    outlook.days[1].gives.push({ cultureId: outlook.cultures[0].id, eaterId: clutch.id, volumeL: 0.5, animals: 2e5 })
    outlook.worry = { date: outlook.days[10].date, chanceShort: 0.31, eaterIds: [clutch.id], shortMean: 1e5 }
  }
  await route.fulfill({ response: answer, json: view })
}

/** The plan of the food comes some seconds after the room has changed. */
const planned = (page) =>
  main(page)
    .getByText(/^As planned/)
    .waitFor({ timeout: 90_000 })

/** @returns {{name: string, who?: 'owner' | 'caretaker' | 'viewer', path: string, before?: Function, act?: Function}[]} */
export function statesOf({ demo, ids, measured, amount, conflict, emptyRoomId, joinPath }) {
  const room = `/rooms/${demo.roomId}`
  const today = `${room}/today`
  const inSheet = (task, act = () => {}) => ({
    path: today,
    who: 'caretaker',
    act: async (page) => {
      await openSheet(page, task)
      await act(page)
    },
  })
  const scrollWhy = (page) => page.getByRole('dialog').getByRole('region', { name: /^Why/ }).scrollIntoViewIfNeeded()
  return [
    { name: 'today', path: today, who: 'caretaker' },
    { name: 'today, further down', path: today, who: 'caretaker', act: scroll(1) },
    {
      name: 'today, a round with nothing left',
      path: today,
      who: 'caretaker',
      act: (page) => page.getByRole('tab', { name: /^Morning/ }).click(),
    },
    {
      name: 'today, the afternoon call',
      path: today,
      who: 'caretaker',
      before: (page) => page.route(/\/food$/, hatchingTonight),
    },
    { name: 'tomorrow', path: `${today}?date=tomorrow`, who: 'caretaker' },
    { name: 'sheet', ...inSheet(amount) },
    { name: 'sheet, why', ...inSheet(amount, scrollWhy) },
    { name: 'sheet, count', ...inSheet(measured, (page) => typeCount(page, 12)) },
    {
      name: 'sheet, is this right',
      ...inSheet(measured, async (page) => {
        await typeCount(page, improbableOf(measured))
        await pressDone(page)
        await page.getByText('Is this right?').scrollIntoViewIfNeeded()
      }),
    },
    {
      name: 'sheet, somebody was faster',
      ...inSheet(measured, async (page) => {
        await page.route(/\/sign-off$/, (route) => route.fulfill(jsonProblem(409, conflict)))
        await typeCount(page, 8)
        await pressDone(page)
        await page.getByRole('button', { name: 'I really did it too' }).scrollIntoViewIfNeeded()
      }),
    },
    {
      name: 'sheet, skip',
      ...inSheet(measured, (page) => page.getByRole('dialog').getByRole('button', { name: /^Skip/ }).click()),
    },
    { name: 'hand-over', path: `${room}/hand-over`, who: 'caretaker' },
    { name: 'hand-over, further down', path: `${room}/hand-over`, who: 'caretaker', act: scroll(1) },
    { name: 'food ahead', path: `${room}/food`, act: planned },
    {
      name: 'food ahead, further down',
      path: `${room}/food`,
      act: (page) => planned(page).then(() => scroll(1)(page)),
    },
    {
      name: 'food ahead, after a cure',
      path: `${room}/food`,
      act: async (page) => {
        await planned(page)
        await main(page)
          .getByRole('button', { name: /^(Keep|Leave|Thin|Let|Start|Buy|Hatch|Show)/ })
          .first()
          .click()
        await page.evaluate(() => window.scrollTo(0, 0))
      },
    },
    { name: 'who eats from what', path: `${room}/who-eats`, act: planned },
    {
      name: 'who eats from what, a week on',
      path: `${room}/who-eats`,
      act: async (page) => {
        await planned(page)
        await page.getByRole('slider').fill('7')
      },
    },
    { name: 'room', path: `${room}/room` },
    { name: 'room, further down', path: `${room}/room`, act: scroll(1) },
    ...['cultures', 'batches', 'clutches', 'pairs', 'tanks', 'groups'].flatMap((kind) => [
      { name: kind, path: `${room}/${kind}/${ids[kind]}` },
      { name: `${kind}, further down`, path: `${room}/${kind}/${ids[kind]}`, act: scroll(1) },
    ]),
    {
      name: 'a loss being recorded',
      path: `${room}/batches/${ids.batches}`,
      act: async (page) => {
        await page.getByRole('button', { name: 'A loss' }).click()
        await page.getByRole('button', { name: 'Record', exact: true }).scrollIntoViewIfNeeded()
      },
    },
    {
      name: 'timeline, a fold and a record open',
      path: `${room}/batches/${ids.batches}`,
      act: async (page) => {
        await page
          .getByRole('button', { name: /^Each of them/ })
          .first()
          .click()
        await page
          .getByRole('button', { name: /^More: Feeding/ })
          .first()
          .click()
        await page.getByRole('heading', { name: 'What was recorded' }).evaluate((heading) => heading.scrollIntoView())
      },
    },
    {
      name: 'timeline, only losses',
      path: `${room}/batches/${ids.batches}`,
      act: async (page) => {
        await page.getByLabel('Show of it').selectOption('Losses')
        await page.getByRole('heading', { name: 'What was recorded' }).evaluate((heading) => heading.scrollIntoView())
      },
    },
    { name: 'past, survival', path: `${room}/survival` },
    { name: 'past, survival further down', path: `${room}/survival`, act: scroll(1) },
    {
      name: 'past, survival clutch by clutch',
      path: `${room}/survival`,
      act: (page) =>
        page.getByRole('heading', { name: 'Clutch by clutch' }).evaluate((heading) => heading.scrollIntoView()),
    },
    {
      name: 'past, life line of a clutch',
      path: `${room}/clutches/${ids.hatched}`,
      act: (page) => page.getByRole('heading', { name: 'Life line' }).evaluate((heading) => heading.scrollIntoView()),
    },
    {
      name: 'past, how many of a clutch made it',
      path: `${room}/clutches/${ids.hatched}`,
      act: (page) => page.getByRole('list', { name: 'How many made it' }).evaluate((list) => list.scrollIntoView()),
    },
    {
      name: 'past, life line of a batch',
      path: `${room}/batches/${ids.batches}`,
      act: (page) => page.getByRole('heading', { name: 'Life line' }).evaluate((heading) => heading.scrollIntoView()),
    },
    {
      name: 'past, placing',
      path: `${room}/groups/${ids.groups}`,
      act: async (page) => {
        await page.getByRole('button', { name: 'Placed, kept or culled' }).click()
        await page.getByRole('heading', { name: 'Placing' }).evaluate((heading) => heading.scrollIntoView())
      },
    },
    { name: 'past, pedigree', path: `${room}/pedigree` },
    { name: 'rules', path: `${room}/rules` },
    {
      name: 'rule, what tomorrow would change',
      path: `${room}/rules`,
      act: async (page) => {
        const rule = page.getByRole('article', { name: 'Feed the rotifers' })
        await rule.getByRole('textbox', { name: /cells a rotifer a day/ }).fill('120000')
        await rule.getByRole('button', { name: 'See what tomorrow would change' }).click()
        await rule.getByRole('button', { name: 'Save the rule' }).scrollIntoViewIfNeeded()
      },
    },
    { name: 'devices', path: `${room}/devices` },
    { name: 'devices, further down', path: `${room}/devices`, act: scroll(1) },
    {
      name: 'devices, naming a broker',
      path: `${room}/devices`,
      act: async (page) => {
        await page.getByRole('button', { name: 'Name a broker' }).click()
        await page.getByRole('button', { name: 'Save the broker' }).scrollIntoViewIfNeeded()
      },
    },
    { name: 'alarms and who is told', path: `${room}/alarms` },
    { name: 'records in and out', path: `${room}/records` },
    { name: 'people', path: `${room}/people` },
    { name: 'account', path: `${room}/account` },
    { name: 'settings', path: `${room}/settings` },
    { name: 'settings, further down', path: `${room}/settings`, act: scroll(1) },
    { name: 'add', path: `${room}/add` },
    { name: 'more', path: `${room}/more` },
    { name: 'rooms', path: '/rooms?choose=1' },
    { name: 'wizard, the room', path: '/rooms/new' },
    {
      name: 'wizard, its rounds',
      path: '/rooms/new',
      act: async (page) => {
        await page.getByLabel('Name of the room').fill('Garage')
        await page.getByRole('button', { name: 'Next' }).click()
        await page.getByRole('heading', { name: 'Its rounds' }).waitFor()
      },
    },
    {
      name: 'wizard, what lives in it',
      path: '/rooms/new',
      act: async (page) => {
        await page.getByLabel('Name of the room').fill('Garage')
        await page.getByRole('button', { name: 'Next' }).click()
        await page.getByRole('button', { name: 'Next' }).click()
        await page.getByRole('button', { name: 'Add a rotifer culture' }).click()
      },
    },
    {
      name: 'wizard, what swims already',
      path: '/rooms/new',
      act: async (page) => {
        await page.getByLabel('Name of the room').fill('Garage')
        await page.getByRole('button', { name: 'Next' }).click()
        await page.getByRole('button', { name: 'Next' }).click()
        await page.getByRole('button', { name: 'Add a tank' }).click()
        await page.getByRole('button', { name: 'Add larvae or juveniles' }).click()
        await page.getByLabel('Species').selectOption('other')
        await page.getByText('No profile of this species yet').scrollIntoViewIfNeeded()
      },
    },
    { name: 'sign-in', path: '/sign-in', who: null },
    { name: 'forgotten password', path: '/sign-in?forgot=1', who: null },
    { name: 'claim', path: '/claim', who: null },
    { name: 'join', path: joinPath, who: null },
    { name: 'not found', path: '/nowhere', who: null },
    { name: 'not found in a room', path: `${room}/nowhere` },
    { name: 'an empty day', path: `/rooms/${emptyRoomId}/today` },
    { name: 'an empty room', path: `/rooms/${emptyRoomId}/room` },
    { name: 'an empty hand-over', path: `/rooms/${emptyRoomId}/hand-over` },
    { name: 'viewer', path: today, who: 'viewer' },
    {
      name: 'failed',
      path: today,
      before: block(days, (route) => route.fulfill(jsonProblem(500, failure))),
      act: (page) => main(page).getByRole('button', { name: 'Try again' }).waitFor({ timeout: 30_000 }),
    },
    {
      name: 'stale',
      path: today,
      before: block(/\/events$/, (route) => route.abort()),
      act: (page) => page.getByText(/no connection/).waitFor(),
    },
    { name: 'loading', path: today, before: block(days, () => {}), isLoading: true },
    {
      name: 'culture, loading',
      path: `${room}/cultures/${ids.cultures}`,
      before: block(/\/(outlook|facts)/, () => {}),
      isLoading: true,
    },
  ]
}

const failure = {
  type: 'about:blank',
  title: 'Something went wrong',
  status: 500,
  code: 'internal',
  detail: 'Something went wrong on the server. Try again; if it stays, look at its log.',
  fields: [],
}
