import { expect, test } from 'vitest'
import { sayDevice } from './say-device.ts'

test.each([
  ['Mozilla/5.0 (Linux; Android 15) AppleWebKit/537.36 (KHTML, like Gecko) Mobile Safari/537.36', 'A phone'],
  ['Mozilla/5.0 (iPhone; CPU iPhone OS 18_1 like Mac OS X) AppleWebKit/605.1.15 Mobile/15E148', 'A phone'],
  ['Mozilla/5.0 (Linux; Android 15) AppleWebKit/537.36 (KHTML, like Gecko) Safari/537.36', 'A tablet'],
  ['Mozilla/5.0 (iPad; CPU OS 18_1 like Mac OS X) AppleWebKit/605.1.15 Mobile/15E148', 'A tablet'],
  ['Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101', 'A computer'],
  ['', 'An unknown device'],
  [null, 'An unknown device'],
])('%s is said as %s', (browser, device) => {
  expect(sayDevice(browser)).toBe(device)
})
