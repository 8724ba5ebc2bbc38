import { expect, test } from 'vitest'
import { addresses, addressOf } from './addresses.ts'
import { routes } from './routes.ts'

test('every route stands where its address says', () => {
  const asRouted = Object.entries(routes).map(([id, { method, base, path }]) => [id, `${method} ${base}${path}`])
  expect(addresses).toEqual(Object.fromEntries(asRouted))
})

test('an address is filled in, and nothing typed leads out of it', () => {
  expect(addressOf('getRoom', { roomId: '../me?x=1' })).toBe('/api/v1/rooms/..%2Fme%3Fx%3D1')
  expect(() => addressOf('getRoom', {})).toThrow('needs roomId')
  expect(() => addressOf('getRoom', { roomId: '' })).toThrow('needs roomId')
})
