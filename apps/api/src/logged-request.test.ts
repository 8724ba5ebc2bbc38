import { expect, test } from 'vitest'
import { loggedRequest } from './logged-request.ts'

const urlOf = (url: string) => loggedRequest({ method: 'GET', url, ip: '192.0.2.1' }).url

test('an invitation and a link for a new password are logged without their token, wherever they are opened', () => {
  expect(urlOf('/join/s3cret-t0ken')).toBe('/join/...')
  expect(urlOf('/join/s3cret-t0ken?_rsc=1')).toBe('/join/...?_rsc=1')
  expect(urlOf('/api/v1/invitations/s3cret-t0ken')).toBe('/api/v1/invitations/...')
  expect(urlOf('/api/v1/invitations/s3cret-t0ken/join')).toBe('/api/v1/invitations/.../join')
  expect(urlOf('/api/auth/account/resets/s3cret-t0ken')).toBe('/api/auth/account/resets/...')
  expect(urlOf('/new-password/s3cret-t0ken')).toBe('/new-password/...')
})

test('any other address is logged as it is', () => {
  const address = '/api/v1/rooms/0195f3a0-0000-7000-8000-000000000000/invitations'
  expect(loggedRequest({ method: 'POST', url: address, ip: '192.0.2.1' })).toEqual({
    method: 'POST',
    url: address,
    remoteAddress: '192.0.2.1',
  })
})
