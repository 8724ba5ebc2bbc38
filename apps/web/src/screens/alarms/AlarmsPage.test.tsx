import type { Message, Reach } from '@fryward/shared'
import { screen, waitFor } from '@testing-library/react'
import { expect, onTestFinished, test, vi } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeRoom } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { AlarmsPage } from './AlarmsPage.tsx'

const at = '2026-11-29T07:00:00.000Z'
const room = makeRoom()
const id = '019abc00-0000-7000-8000-000000000001'
const reach: Reach = {
  isMailSetUp: true,
  mail: 'ana@example.org',
  alarmsByMail: true,
  pushKey: 'B'.repeat(87),
  phones: [],
}
const message = (part: Partial<Message>): Message => ({
  ...{ id, alarmId: id, occasion: 'raised', ordinal: 0, way: 'mail', personName: 'Ana', to: 'ana@example.org' },
  ...{ state: 'sent', createdAt: at, endedAt: at, detail: '250 taken', ...part },
})
const answers = {
  listAbsences: () => [{ from: at, to: '2026-11-29T09:30:00.000Z' }],
  listAlarms: () => [],
  listMessages: () => [],
  getWebhook: () => ({ url: null, secret: null }),
}

test('what was sent says to whom, by which way, and where nobody knows whether it arrived', async () => {
  const lost = message({ id: room.id, ordinal: 1, state: 'unknown', detail: 'Connection closed unexpectedly' })
  answerApi({ ...answers, getReach: () => reach, listMessages: () => [lost, message({})] })
  renderInRoom(<AlarmsPage />, { room })
  const list = (await screen.findAllByText(/Mail to Ana \(ana@example.org\)/)).map((each) => each.textContent)
  expect(list[0]).toMatch(/^An alarm, again.*nobody said whether it arrived\. Connection closed unexpectedly$/)
  expect(list[1]).toMatch(/taken by the other side$/)
  expect(screen.getByText('When this server was off')).toBeTruthy()
})

test('mail is switched off for oneself, and a server without mail says what to set', async () => {
  const { writes } = answerApi({
    ...answers,
    getReach: () => ({ ...reach, alarmsByMail: writes.length === 0, isMailSetUp: writes.length === 0 }),
    changeReach: () => reach,
  })
  const { user } = renderInRoom(<AlarmsPage />, { room })
  await user.click(await screen.findByLabelText('By mail to ana@example.org'))
  expect(await screen.findByText(/This server sends no mail yet/)).toBeTruthy()
  expect(writes).toEqual([{ route: 'changeReach', body: { alarmsByMail: false } }])
})

const phone = {
  name: 'A computer',
  endpoint: 'https://push.example.org/1',
  p256dh: 'p'.repeat(87),
  auth: 'a'.repeat(22),
}
const { name: _, endpoint, ...keys } = phone
const subscription = { toJSON: () => ({ endpoint, keys }), unsubscribe: vi.fn(async () => true) }

/** A browser that takes pushes, for one test; `subscribe` as the browser answers. */
function takePushes(subscribe: () => Promise<unknown>) {
  subscription.unsubscribe.mockClear()
  vi.stubGlobal('isSecureContext', true)
  vi.stubGlobal('PushManager', class {})
  vi.stubGlobal('Notification', { requestPermission: async () => 'granted' })
  const serviceWorker = {
    register: async () => undefined,
    ready: Promise.resolve({ pushManager: { getSubscription: async () => subscription, subscribe } }),
  }
  Object.defineProperty(navigator, 'serviceWorker', { value: serviceWorker, configurable: true })
  onTestFinished(() => void Reflect.deleteProperty(navigator, 'serviceWorker'))
}

async function pushToThisDevice() {
  const { writes } = answerApi({ ...answers, getReach: () => reach, addPhone: () => reach })
  const { user } = renderInRoom(<AlarmsPage />, { room })
  await user.click(await screen.findByRole('button', { name: 'Push alarms to this device' }))
  await waitFor(() => expect(writes).toEqual([{ route: 'addPhone', body: phone }]))
}

test('a browser is pushed to once its person allows it, and other rooms go on pushing to it', async () => {
  const subscribe = vi.fn(async () => subscription)
  takePushes(subscribe)
  await pushToThisDevice()
  expect(subscribe).toHaveBeenCalledWith({ userVisibleOnly: true, applicationServerKey: reach.pushKey })
  expect(subscription.unsubscribe).not.toHaveBeenCalled()
})

test('a browser that was let in under another key of the server is let in again', async () => {
  const subscribe = vi.fn(async () => subscription)
  subscribe.mockRejectedValueOnce(new DOMException('There is one under another key.', 'InvalidStateError'))
  takePushes(subscribe)
  await pushToThisDevice()
  expect(subscription.unsubscribe).toHaveBeenCalledOnce()
  expect(subscribe).toHaveBeenCalledTimes(2)
})

test('an owner sets a webhook and gets the secret that signs it', async () => {
  const hook = { url: 'https://hub.example.org/alarms', secret: 'whsec_abc' }
  const { writes } = answerApi({
    ...answers,
    getReach: () => reach,
    getWebhook: () => (writes.length > 0 ? hook : { url: null, secret: null }),
    changeWebhook: () => hook,
  })
  const { user } = renderInRoom(<AlarmsPage />, { room })
  await user.type(await screen.findByLabelText('Address'), hook.url)
  await user.click(screen.getByRole('button', { name: 'Save the address' }))
  expect(await screen.findByText('whsec_abc')).toBeTruthy()
  expect(writes).toEqual([{ route: 'changeWebhook', body: { url: hook.url } }])
})
