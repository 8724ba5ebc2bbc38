// Readings poured into an API at fixed instants, whatever its answers do: a process of its own, told what to send as its one
// argument, which makes its posts first, says that it is ready, pours once it is told to, and says what came of it.
//
//   {"url", "devices": [{"token", "nextMs"}], "size": readings in a post, "perSecond": readings, "ms", "mostUnderWay": posts}
import { post, postAgent, postOf } from './posting.mjs'

const { url, devices, size, perSecond, ms, mostUnderWay } = JSON.parse(process.argv[2])
const everyMs = (1000 * size) / perSecond
const posts = Array.from({ length: Math.floor(ms / everyMs) }, (_, index) => {
  const device = devices[index % devices.length]
  return { token: device.token, ...postOf(device, size) }
})
const agent = postAgent(mostUnderWay)
process.on('message', async () => process.send(await pour()))
process.on('disconnect', () => process.exit(0))
process.send({ isReady: true, devices })

/** @returns readings that were kept in `ms`, posts that there was no place for, and how long the slowest of a hundred took. */
async function pour() {
  const from = performance.now()
  const [tookMs, underWay] = [[], new Set()]
  let [kept, unsent] = [0, 0]
  for (const [index, each] of posts.entries()) {
    const due = from + index * everyMs
    // A timer is a millisecond early or late; what is due by then goes with it.
    if (due - performance.now() > 1) await new Promise((resolve) => setTimeout(resolve, due - performance.now()))
    if (underWay.size >= mostUnderWay) {
      unsent += 1
      continue
    }
    const sent = post(url, { agent, ...each }).then((number) => {
      tookMs.push(performance.now() - due)
      if (performance.now() - from <= ms) kept += number
      underWay.delete(sent)
    })
    underWay.add(sent)
  }
  await Promise.all(underWay)
  agent.destroy()
  tookMs.sort((one, other) => one - other)
  return { kept, unsent, postP99Ms: tookMs[Math.floor(tookMs.length * 0.99)] }
}
