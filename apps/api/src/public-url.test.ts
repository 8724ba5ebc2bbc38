import { expect, test } from 'vitest'
import { publicUrlOf } from './public-url.ts'

const lan = ['192.168.1.20', '10.0.0.5']
const tls = { TLS_CERT: 'a', TLS_KEY: 'b' }

test.each([
  [{ HOST: '0.0.0.0', PORT: 3000, ...tls }, lan, 'https://192.168.1.20:3000'],
  [{ HOST: '::', PORT: 3000 }, lan, 'http://192.168.1.20:3000'],
  [{ HOST: '0.0.0.0', PORT: 3000 }, [], 'http://localhost:3000'],
  [{ HOST: '127.0.0.1', PORT: 3100 }, lan, 'http://localhost:3100'],
  [{ HOST: '192.168.1.7', PORT: 3000 }, lan, 'http://192.168.1.7:3000'],
  [{ HOST: 'fd00::5', PORT: 3000 }, lan, 'http://[fd00::5]:3000'],
  [{ HOST: '0.0.0.0', PORT: 3000, PUBLIC_URL: 'https://fry.example' }, lan, 'https://fry.example'],
])('links of %o on a machine at %j begin with %s', (config, addresses, url) => {
  expect(publicUrlOf(config, addresses)).toBe(url)
})
