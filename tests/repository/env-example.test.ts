import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseEnv } from 'node:util'
import { parseSettings, settingNames } from '@fryward/standalone'
import { describe, expect, it } from 'vitest'
import { root } from '../support/project-root.ts'

const text = readFileSync(join(root, '.env.example'), 'utf8')
const example = parseEnv(text)

describe('.env.example', () => {
  it('names exactly the settings, and after them what only docker-compose.yml reads', () => {
    expect(Object.keys(example).sort()).toEqual([...settingNames, 'POSTGRES_PASSWORD'].sort())
    expect(settingNames).toContain('PORT')
    expect(readFileSync(join(root, 'docker-compose.yml'), 'utf8')).toContain('POSTGRES_PASSWORD')
  })

  it('says as it stands what holds without it', () => {
    expect(parseSettings(example, '/somewhere')).toEqual(parseSettings({}, '/somewhere'))
  })

  it('says above each setting what it is for', () => {
    const paragraphs = text.trim().split('\n\n').slice(1)
    for (const paragraph of paragraphs) expect(paragraph).toMatch(/^(# .+\n)+([A-Z_]+=.*\n?)+$/)
  })
})

describe('a wrong setting', () => {
  it.each([
    [{ PORT: '99999' }, 'The setting PORT is "99999"; allowed is a port number from 1 to 65535.'],
    [{ TLS: 'maybe' }, "The setting TLS is \"maybe\"; allowed is 'off' or 'local'."],
    [
      { PUBLIC_URL: 'fish' },
      'The setting PUBLIC_URL is "fish"; allowed is an origin such as https://fish.example.org.',
    ],
    [{ TLS_CERT: 'a.pem' }, 'The setting TLS_CERT is "a.pem"; allowed is given together with TLS_KEY, or neither.'],
    [{ TLS_CERT: 'a.pem', TLS_KEY: 'b.pem' }, 'The setting TLS_CERT names a.pem, which does not exist.'],
    [{ AUTH_SECRET: 'short' }, 'The setting AUTH_SECRET is "short"; allowed is at least 32 characters.'],
    [{ SEED_DEMO: 'perhaps' }, 'The setting SEED_DEMO is "perhaps"; allowed is 1 or 0.'],
    [
      { LOG_LEVEL: 'chatty' },
      'The setting LOG_LEVEL is "chatty"; allowed is one of: fatal, error, warn, info, debug, silent.',
    ],
    [{ REQUESTS_PER_MINUTE: '5' }, 'The setting REQUESTS_PER_MINUTE is "5"; allowed is a whole number of 60 or more.'],
  ])('%o is told with its value and what is allowed', (environment, sentence) => {
    expect(() => parseSettings(environment, '/somewhere')).toThrow(sentence)
  })

  it.each(settingNames)('%s is never refused in a validator’s own words', (name) => {
    for (const value of ['-1', '0.5', '1e12', 'x', 'http:', '\u0000', 'x'.repeat(5000)])
      try {
        parseSettings({ [name]: value }, '/somewhere')
      } catch (refusal) {
        const [, allowed] = /; allowed is (.*)$/.exec(String(refusal)) ?? []
        if (allowed !== undefined)
          expect(allowed).not.toMatch(/\b(invalid|expected|received|too (small|big)|regex|pattern|NaN|undefined)\b/i)
      }
  })
})
