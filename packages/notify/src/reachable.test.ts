import { describe, expect, test } from 'vitest'
import { reachableBy } from './reachable.ts'

const { assertElsewhere, lookUp } = reachableBy('LOCAL_WEBHOOKS')

// Loopback, "this network", link-local and mapped blocks: RFC 6890, tables 1-20; RFC 4291, section 2.5.5.2.
describe('an address that messages go to', () => {
  test.each([
    'http://127.0.0.1/',
    'http://127.1.2.3:8080/x',
    'http://0.0.0.0/',
    'http://169.254.169.254/latest',
    'http://[::1]/',
    'http://[::]/',
    'http://[fe80::1]/',
    'http://[::ffff:127.0.0.1]/',
    'http://[::ffff:a9fe:a9fe]/',
    'http://2130706433/',
    'http://0x7f.1/',
  ])('%s is this machine', (url) => {
    expect(() => assertElsewhere(new URL(url).hostname)).toThrow(/is this machine itself/)
  })

  test.each(['http://192.168.1.20/', 'https://[2001:db8::1]/', 'https://example.org/'])('%s is elsewhere', (url) => {
    expect(() => assertElsewhere(new URL(url).hostname)).not.toThrow()
  })

  test('a name that leads to this machine is refused when it is looked up', async () => {
    const error = await new Promise((resolve) => lookUp('localhost', { all: false }, resolve))
    expect(error).toMatchObject({ code: 'ENOTALLOWED' })
  })
})
