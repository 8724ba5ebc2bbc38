import { roles } from '@fryward/shared'
import { expect, test } from 'vitest'
import type { Actor, Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { assertWithinADay } from '../reopening/within-a-day.ts'
import { assertMay, mayAs } from './permission.ts'
import { personOf } from './person-of.ts'
import { assertFresh, definedFields } from './versioned.ts'

const refusal = (act: () => unknown): RoomError | null => {
  try {
    act()
    return null
  } catch (error) {
    if (error instanceof RoomError) return error
    throw error
  }
}

test('each role may what the one under it may, and one thing more', () => {
  const what = ['read', 'sign_off', 'record', 'manage', 'own'] as const
  const may = (role: (typeof roles)[number]) => what.filter((permission) => mayAs(role, permission))
  expect(may('viewer')).toEqual(['read'])
  expect(may('stand_in')).toEqual(['read', 'sign_off', 'record'])
  expect(may('caretaker')).toEqual(['read', 'sign_off', 'record', 'manage'])
  expect(may('owner')).toEqual([...what])
  expect([...roles].sort()).toEqual(['caretaker', 'owner', 'stand_in', 'viewer'])
})

test('a device knows of no room, and neither it nor the clock is a person', async () => {
  const device: Actor = { kind: 'device', roomId: 'room', deviceId: 'probe', name: 'Probe' }
  const clock: Actor = { kind: 'system', job: 'day' }
  const asked = { tx: {} as Parameters<typeof assertMay>[0]['tx'], roomId: 'room', permission: 'read' as const }
  await expect(assertMay({ ...asked, actor: device })).rejects.toMatchObject({ code: 'not_found' })
  expect(await assertMay({ ...asked, permission: 'own', actor: clock })).toBe('owner')
  for (const actor of [device, clock])
    expect(refusal(() => personOf(actor))).toMatchObject({ code: 'not_allowed', message: 'Only a person does this.' })
  expect(personOf({ kind: 'person', userId: 'ana', name: 'Ana' })).toBe('ana')
})

test('a change holds from the newest version alone, and what was not sent is not changed', () => {
  const current = { version: 4, volumeL: 60 }
  expect(refusal(() => assertFresh(current, 4, 'Tank 1'))).toBeNull()
  for (const seen of [3, 5])
    expect(refusal(() => assertFresh(current, seen, 'Tank 1'))).toMatchObject({
      ...{ code: 'stale_version', current, message: expect.stringContaining('Tank 1 was changed by somebody else') },
    })
  expect(definedFields({ a: undefined, b: null, c: 0, d: '' })).toEqual({ b: null, c: 0, d: '' })
})

test('what was done is taken back within a day', () => {
  const at = new Date('2026-03-10T12:00:00.000Z')
  const after = (now: string) => refusal(() => assertWithinADay({ now } as Context, at, 'write it anew'))
  expect(after('2026-03-11T12:00:00.000Z')).toBeNull()
  expect(after('2026-03-11T12:00:00.001Z')).toMatchObject({
    ...{ code: 'too_late_to_undo', message: expect.stringContaining('Now write it anew.') },
  })
})
