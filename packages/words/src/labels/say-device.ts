/** What kind of device a browser says that it runs on; browsers do not tell the truth about much else. */
export function sayDevice(browser: string | null): string {
  if (!browser) return 'An unknown device'
  if (/iPad|Tablet|Android(?!.*Mobile)/.test(browser)) return 'A tablet'
  return /Mobile|iPhone|Android/.test(browser) ? 'A phone' : 'A computer'
}
