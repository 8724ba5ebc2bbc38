const millions = [
  { size: 1e12, word: 'trillion' },
  { size: 1e9, word: 'billion' },
  { size: 1e6, word: 'million' },
] as const

/** Digits a syringe, jug or scale can show: three that mean something, none after the point from a hundred up. */
export function formatNumber(value: number): string {
  if (!Number.isFinite(value)) return '–'
  const size = Math.abs(value)
  const large = millions.find((step) => size >= step.size)
  if (large) return `${plain(value / large.size, 3)} ${large.word}`
  // From ten thousand on nobody counted one by one: an estimate shows no more than three digits.
  if (size >= 10_000) return plain(value, 3)
  if (size >= 100) return Math.round(value).toLocaleString('en-GB')
  return plain(value, size < 1 ? 2 : 3)
}

const plain = (value: number, digits: number) => value.toLocaleString('en-GB', { maximumSignificantDigits: digits })

/** Reads what a person typed: a comma or a point, spaces as thousands; undefined when it is no number. */
export function parseNumber(text: string): number | undefined {
  const clean = text.trim().replaceAll(/[\s']/g, '').replace(',', '.')
  if (clean === '' || !/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(clean)) return undefined
  const value = Number(clean)
  return Number.isFinite(value) ? value : undefined
}
