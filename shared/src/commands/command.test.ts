import { expect, test } from 'vitest'
import { type RouteId, routes } from '../routes.ts'
import { type CommandOf, CommandSchema } from './command.ts'
import { commandRouteIds, sentAtOnce } from './command-routes.ts'

const id = '019ac000-0000-7000-8000-000000000001'
const roomId = '019ac000-0000-7000-8000-000000000002'
const taskId = '019ac000-0000-7000-8000-000000000003'
const about = { id, personId: 'carla', madeAt: '2026-11-29T07:00:00.000Z' }
const signOff = {
  ...about,
  route: 'signOffTask',
  params: { roomId, taskId },
  body: { values: {}, doneAt: about.madeAt },
} satisfies CommandOf<'signOffTask'>

test('every write of the table is a command or says why it cannot wait', () => {
  const writes = (Object.keys(routes) as RouteId[]).filter((route) => routes[route].method !== 'GET')
  expect([...commandRouteIds, 'addPhoto', ...Object.keys(sentAtOnce)].sort()).toEqual(writes.sort())
})

test('every command is meant for one room', () => {
  for (const route of commandRouteIds) expect(Object.keys(routes[route].params.shape), route).toContain('roomId')
})

test("a command's parameters and body are those of its route", () => {
  expect(CommandSchema.safeParse(signOff).success).toBe(true)
  expect(CommandSchema.safeParse({ ...signOff, params: { roomId } }).success).toBe(false)
  expect(CommandSchema.safeParse({ ...signOff, body: { reason: 'no time' } }).success).toBe(false)
  expect(CommandSchema.safeParse({ ...signOff, route: 'skipTask', body: { reason: 'no time' } }).success).toBe(true)
  expect(CommandSchema.safeParse({ ...signOff, route: 'createInvitation' }).success).toBe(false)
})

test('a photo carries its picture', () => {
  const photo = { ...about, route: 'addPhoto', params: { roomId }, body: { subjectId: taskId, caption: '' } }
  const image = new Blob(['bytes'], { type: 'image/jpeg' })
  expect(CommandSchema.safeParse({ ...photo, body: { ...photo.body, image } }).success).toBe(true)
  expect(CommandSchema.safeParse({ ...photo, body: { ...photo.body, image: 'bytes' } }).success).toBe(false)
  expect(CommandSchema.safeParse(photo).success).toBe(false)
})
