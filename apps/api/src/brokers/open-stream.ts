import { isIP, type LookupFunction, connect as plain, type Socket } from 'node:net'
import { connect as tls } from 'node:tls'
import { reachableBy } from '@fryward/notify'

export type Address = {
  url: string
  /** PEM of an authority that is believed for this broker alone. */
  authority: string | null
  /** Whether a broker may run on this machine itself. */
  mayReachThisMachine: boolean
}

const patienceMs = 10_000
// MQTT 3.1.1, section 4.2: the ports registered at IANA.
const ports: Record<string, number> = { 'mqtt:': 1883, 'mqtts:': 8883 }

/** A connection that stands, its certificate looked at: only then is anybody told a password. */
export async function openStream({ url, authority, mayReachThisMachine }: Address): Promise<Socket> {
  const { protocol, hostname, port: given } = new URL(url)
  const host = hostname.replace(/^\[|\]$/g, '')
  const guard = mayReachThisMachine ? null : reachableBy('LOCAL_BROKERS')
  guard?.assertElsewhere(host)
  const where = { host, port: Number(given) || ports[protocol] || 0, ...(guard ? { lookup: guard.lookUp } : {}) }
  const isTls = protocol === 'mqtts:'
  const socket = isTls ? openTls(where, authority) : plain(where)
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => fail(Object.assign(new Error('no answer'), { code: 'ETIMEDOUT' })), patienceMs)
    const fail = (error: Error) => {
      clearTimeout(timer)
      socket.destroy()
      reject(error)
    }
    socket.once('error', fail)
    socket.once(isTls ? 'secureConnect' : 'connect', () => {
      clearTimeout(timer)
      socket.off('error', fail)
      resolve(socket)
    })
  })
}

function openTls(where: { host: string; port: number; lookup?: LookupFunction }, authority: string | null): Socket {
  // A name for the other side to choose its certificate by; an address of digits is none (RFC 6066, section 3).
  const servername = isIP(where.host) === 0 ? where.host : ''
  return tls({ ...where, servername, ...(authority === null ? {} : { ca: authority }) })
}
