import { Agent, request } from 'node:http'

export const connections = 8

/** As many requests as so many keep-alive connections get answered in `ms`, and how long each took. */
export async function keepAsking({ url, cookie }, ms, askers = connections) {
  const agent = new Agent({ keepAlive: true, maxSockets: askers })
  const latencies = []
  let bytes = 0
  const until = performance.now() + ms
  const worker = async () => {
    while (performance.now() < until) {
      const from = performance.now()
      bytes = await get({ url, cookie, agent })
      latencies.push(performance.now() - from)
    }
  }
  const from = performance.now()
  await Promise.all(Array.from({ length: askers }, worker))
  const seconds = (performance.now() - from) / 1000
  agent.destroy()
  latencies.sort((a, b) => a - b)
  return {
    perSecond: latencies.length / seconds,
    middleMs: latencies[Math.floor(latencies.length / 2)],
    p99Ms: latencies[Math.floor(latencies.length * 0.99)],
    bytes,
  }
}

/** Bytes of the answer. */
export function get({ url, cookie, agent }) {
  return new Promise((resolve, reject) => {
    const asked = request(url, { agent, headers: { cookie, 'accept-encoding': 'gzip, deflate, br' } }, (answer) => {
      let bytes = 0
      answer.on('data', (chunk) => {
        bytes += chunk.length
      })
      answer.on('end', () =>
        answer.statusCode === 200 ? resolve(bytes) : reject(new Error(`${url} answered ${answer.statusCode}`)),
      )
    })
    asked.on('error', reject)
    asked.end()
  })
}
