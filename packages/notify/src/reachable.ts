import { type LookupAddress, lookup } from 'node:dns'
import { BlockList, isIP, type LookupFunction } from 'node:net'

// An address that a person types is not to be a way into this machine or into a cloud's own services.
const ownMachine = new BlockList()
ownMachine.addSubnet('0.0.0.0', 8)
ownMachine.addSubnet('127.0.0.0', 8)
ownMachine.addSubnet('169.254.0.0', 16)
ownMachine.addAddress('::', 'ipv6')
ownMachine.addAddress('::1', 'ipv6')
ownMachine.addSubnet('fe80::', 10, 'ipv6')

class NotAllowed extends Error {
  override name = 'NotAllowed'
  readonly code = 'ENOTALLOWED'
}

// A list knows the addresses of version 4 that stand in one of version 6.
const isOwn = (address: string): boolean => ownMachine.check(address, isIP(address) === 6 ? 'ipv6' : 'ipv4')

export type Guard = {
  /** @throws NotAllowed for an address of digits that is this machine's own. */
  assertElsewhere: (hostname: string) => void
  /** Looks a name up as ever, and refuses it where any of its addresses is this machine's own. */
  lookUp: LookupFunction
}

/** Keeps what a person typed away from this machine. @param setting what lets it through, as whoever reads the refusal may set it. */
export function reachableBy(setting: 'LOCAL_WEBHOOKS' | 'LOCAL_BROKERS'): Guard {
  const refusalOf = (host: string) =>
    new NotAllowed(`${host} is this machine itself. Choose an address of another machine, or set ${setting}=1.`)
  return {
    assertElsewhere: (hostname) => {
      const host = hostname.replace(/^\[|\]$/g, '')
      if (isIP(host) !== 0 && isOwn(host)) throw refusalOf(host)
    },
    lookUp: (hostname, options, callback) => {
      lookup(hostname, { ...options, all: true }, (error, addresses: LookupAddress[]) => {
        if (error) return callback(error, '', 0)
        if (addresses.some(({ address }) => isOwn(address))) return callback(refusalOf(hostname), '', 0)
        if (options.all) return callback(null, addresses)
        const [first] = addresses
        return callback(null, first?.address ?? '', first?.family ?? 0)
      })
    },
  }
}
