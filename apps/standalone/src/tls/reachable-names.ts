import { isIP } from 'node:net'
import { hostname, networkInterfaces } from 'node:os'

export type ReachableNames = { names: string[]; addresses: string[] }

/** Every name and address by which this machine may be reached: itself, its network cards, and PUBLIC_URL's host. */
export function findReachableNames(publicUrl: string | undefined): ReachableNames {
  const names = new Set(['localhost'])
  const addresses = new Set(['127.0.0.1', '::1'])
  const own = hostname().toLowerCase()
  if (/^[a-z0-9][a-z0-9.-]*$/.test(own) && isIP(own) === 0) {
    names.add(own)
    if (!own.includes('.')) names.add(`${own}.local`)
  }
  for (const address of lanAddresses()) addresses.add(address)
  if (publicUrl !== undefined) {
    const host = new URL(publicUrl).hostname.replace(/^\[|\]$/g, '')
    if (isIP(host) === 0) names.add(host)
    else addresses.add(host)
  }
  return { names: [...names], addresses: [...addresses] }
}

/** Addresses of this machine that others on its network can use; link-local IPv6 has a zone and is left out. */
export function lanAddresses(): string[] {
  return Object.values(networkInterfaces())
    .flatMap((cards) => cards ?? [])
    .filter((card) => !card.internal && !card.address.startsWith('fe80:'))
    .map((card) => card.address)
}
