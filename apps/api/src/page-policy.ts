import { createHash } from 'node:crypto'

const standing = {
  script: /<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g,
  style: /<style[^>]*>([\s\S]*?)<\/style>/g,
  styleAttribute: /\sstyle="([^"]*)"/g,
}
/** What React writes instead of these letters in an attribute. */
const written: Record<string, string> = { '&quot;': '"', '&#x27;': "'", '&lt;': '<', '&gt;': '>', '&amp;': '&' }

const readAttribute = (text: string): string => text.replace(/&[a-z0-9#]+;/g, (name) => written[name] ?? name)
const hashOf = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`

const hashesOf = (html: string, what: RegExp, read = (text: string) => text): string[] => [
  ...new Set([...html.matchAll(what)].map(([, text = '']) => hashOf(read(text)))),
]

/**
 * What a page of the dashboard may run and wear: scripts and styles of this server, and those that stand in the page itself
 * as it was built, by their hashes (Content Security Policy Level 3, W3C, section 2.3.1). What slips into the page in the
 * browser is not among them. Hashes and no nonces: pages are built once and stay the same for everybody.
 */
export function policyFor(html: string): string {
  const attributes = hashesOf(html, standing.styleAttribute, readAttribute)
  return [
    "default-src 'self'",
    `script-src ${["'self'", ...hashesOf(html, standing.script)].join(' ')}`,
    "script-src-attr 'none'",
    `style-src ${["'self'", ...hashesOf(html, standing.style)].join(' ')}`,
    // The keyword lets hashes speak of attributes, and allows nothing by itself.
    `style-src-attr ${attributes.length > 0 ? ["'unsafe-hashes'", ...attributes].join(' ') : "'none'"}`,
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    "connect-src 'self'",
    "object-src 'none'",
    "base-uri 'self'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ')
}
