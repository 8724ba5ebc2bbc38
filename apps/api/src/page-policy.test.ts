import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { policyFor } from './page-policy.ts'

const hashOf = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`

test('a page runs what stands in it and what comes from its server, and nothing else', () => {
  const html = `<html><head><style>a{color:red}</style><script src="/a.js" async=""></script><script>one()</script>
    <script id="x">two("<b>")</script><script>one()</script></head></html>`
  const policy = policyFor(html)
  const directives = new Map(policy.split('; ').map((each) => [each.split(' ')[0], each.split(' ').slice(1)]))
  expect(directives.get('script-src')).toEqual(["'self'", hashOf('one()'), hashOf('two("<b>")')])
  expect(directives.get('script-src-attr')).toEqual(["'none'"])
  for (const [name, sources] of directives) if (name !== 'style-src') expect(sources).not.toContain("'unsafe-inline'")
  expect(policy).not.toContain('unsafe-eval')
})
