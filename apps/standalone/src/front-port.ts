import { createServer } from 'node:net'
import { setTimeout as delay } from 'node:timers/promises'
import { codeOf, messageOf, StartProblem } from './start-problem.ts'

export type FrontPort = { host: string; port: number }

/**
 * Makes sure that the front door's address can be listened on, before anything slow is started. With `patienceMs` a taken
 * port is asked again until then: the parts of a killed run need a moment to let go.
 */
export async function assertPortIsFree({ host, port }: FrontPort, patienceMs: number): Promise<void> {
  const deadline = Date.now() + patienceMs
  for (;;) {
    const refusal = await tryToListen(host, port)
    if (refusal === undefined) return
    if (codeOf(refusal) !== 'EADDRINUSE' || Date.now() >= deadline) throw explain(refusal, { host, port })
    await delay(100)
  }
}

function tryToListen(host: string, port: number): Promise<Error | undefined> {
  return new Promise((resolve) => {
    const server = createServer()
    server.once('error', resolve)
    server.listen({ host, port, exclusive: true }, () => server.close(() => resolve(undefined)))
  })
}

function explain(refusal: Error, { host, port }: FrontPort): StartProblem {
  const another = port === 65_535 ? 3001 : port + 1
  switch (codeOf(refusal)) {
    case 'EADDRINUSE':
      return new StartProblem(
        `Port ${port} on ${host} is taken by another program; stop that one, or choose another port: PORT=${another} npm start`,
      )
    case 'EACCES':
      return new StartProblem(`This user may not listen on port ${port}; set PORT to 1024 or higher.`)
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return new StartProblem(
        `HOST is ${host}, which is not an address of this machine; 127.0.0.1 or 0.0.0.0 always are.`,
      )
    default:
      return new StartProblem(`Fryward cannot listen on ${host}, port ${port}: ${messageOf(refusal)}`)
  }
}
