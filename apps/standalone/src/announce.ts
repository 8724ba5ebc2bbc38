import type { DemoSignIns } from './demo-room.ts'
import { isLoopback, type Settings } from './settings.ts'
import { lanAddresses } from './tls/reachable-names.ts'

export type Announcement = {
  settings: Settings
  isHttps: boolean
  authorityFile: string | undefined
  demo: DemoSignIns | undefined
  claimCode: string | undefined
  log: (sentence: string) => void
}

/** Tells the person at the terminal where to go and with what. */
export function announce({ settings, isHttps, authorityFile, demo, claimCode, log }: Announcement): void {
  const scheme = isHttps ? 'https' : 'http'
  const url = settings.PUBLIC_URL ?? `${scheme}://localhost:${settings.PORT}`
  log('')
  log(`Fryward is ready at ${url}`)
  if (settings.PUBLIC_URL === undefined && !isLoopback(settings.HOST)) {
    for (const address of lanAddresses()) {
      log(`  on the network: ${scheme}://${address.includes(':') ? `[${address}]` : address}:${settings.PORT}`)
    }
  }
  if (authorityFile !== undefined)
    log(`  Phones trust it after installing ${authorityFile} once (also at ${url}/fryward-ca.crt).`)
  if (claimCode !== undefined) log(`  This server has no owner yet: open ${url}/claim and enter ${claimCode}`)
  if (demo !== undefined) {
    log('  Demo sign-ins:')
    for (const person of demo.people) log(`    ${person.role.padEnd(10)} ${person.email}   ${person.password}`)
  }
  log('  Ctrl-C stops it.')
}
