import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { policyFor } from './page-policy.ts'

const hashOf = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`

const directivesOf = (html: string) =>
  new Map(
    policyFor(html)
      .split('; ')
      .map((each) => [each.split(' ')[0], each.split(' ').slice(1)]),
  )

test('a page runs and wears what stands in it and what comes from its server, and nothing else', () => {
  const directives = directivesOf(`<html><head><style data-x>a{color:red}</style><script src="/a.js" async=""></script>
    <script>one()</script><script id="x">two("<b>")</script><script>one()</script></head>
    <body><p style="margin:0">1</p><p class="a" style="margin:0">2</p><p style="font-family:&quot;A &amp; B&quot;">3</p></html>`)
  expect(directives.get('script-src')).toEqual(["'self'", hashOf('one()'), hashOf('two("<b>")')])
  expect(directives.get('script-src-attr')).toEqual(["'none'"])
  expect(directives.get('style-src')).toEqual(["'self'", hashOf('a{color:red}')])
  expect(directives.get('style-src-attr')).toEqual([
    ...["'unsafe-hashes'", hashOf('margin:0'), hashOf('font-family:"A & B"')],
  ])
  for (const sources of directives.values())
    for (const open of ["'unsafe-inline'", "'unsafe-eval'"]) expect(sources).not.toContain(open)
})

test('a page in which no style stands wears none but those that come from its server', () => {
  const directives = directivesOf('<html><head><script>one()</script></head></html>')
  expect(directives.get('style-src')).toEqual(["'self'"])
  expect(directives.get('style-src-attr')).toEqual(["'none'"])
})
