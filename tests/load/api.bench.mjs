// Today's list of the demo room under load, as a ratio to a bare Fastify route with one indexed query of eleven rows.
// Both servers run as processes of their own over the same PostgreSQL and take turns, so that the machine's other work
// falls on both.
import { join } from 'node:path'
import { startDemoApi } from './demo-api.mjs'
import { keepAsking } from './keep-asking.mjs'

const turnMs = 4000
const turns = 3

export async function run() {
  const { api, demo, run: start, cookieOf, stop } = await startDemoApi()
  try {
    const bare = await start(join(import.meta.dirname, 'bare-server.mjs'), { ROOM_ID: demo.roomId })
    const cookie = await cookieOf('caretaker')
    const day = { url: `${api.url}/api/v1/rooms/${demo.roomId}/days/today`, cookie }
    const reference = { url: `${bare.url}/rows`, cookie }
    await keepAsking(day, 1000)
    await keepAsking(reference, 1000)
    const seen = { day: [], reference: [] }
    for (let turn = 0; turn < turns; turn += 1) {
      seen.reference.push(await keepAsking(reference, turnMs))
      seen.day.push(await keepAsking(day, turnMs))
    }
    report(seen)
  } finally {
    await stop()
  }
}

function report({ day, reference }) {
  const total = (runs) => runs.reduce((sum, { perSecond }) => sum + perSecond, 0) / runs.length
  const slow = (runs) => Math.max(...runs.map(({ p99Ms }) => p99Ms))
  console.log(
    `today's list        ${total(day).toFixed(0)} requests a second, 99th percentile ${slow(day).toFixed(1)} ms, ${(day[0].bytes / 1024).toFixed(0)} kB an answer`,
  )
  console.log(
    `bare Fastify and pg ${total(reference).toFixed(0)} requests a second, 99th percentile ${slow(reference).toFixed(1)} ms, ${(reference[0].bytes / 1024).toFixed(0)} kB an answer`,
  )
  console.log(`ratio ${(total(day) / total(reference)).toFixed(2)} (aim 0.70)`)
}
