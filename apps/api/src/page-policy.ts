import { createHash } from 'node:crypto'

const inlineScript = /<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g
const hashOf = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`

/**
 * What a page of the dashboard may run: scripts of this server, and those that stand in the page itself as it was built,
 * by their hashes (Content Security Policy Level 3, W3C, section 2.3.1). What slips into the page in the
 * browser is not among them. Hashes and no nonces: pages are built once and stay the same for everybody.
 */
export function policyFor(html: string): string {
  const scripts = new Set([...html.matchAll(inlineScript)].map(([, text = '']) => hashOf(text)))
  return [
    "default-src 'self'",
    `script-src ${["'self'", ...scripts].join(' ')}`,
    "script-src-attr 'none'",
    // The library of inputs writes style elements of its own in the browser, and a bar's height is an attribute. A style
    // runs nothing, and loads nothing from anywhere else.
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    "connect-src 'self'",
    "object-src 'none'",
    "base-uri 'self'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ')
}
