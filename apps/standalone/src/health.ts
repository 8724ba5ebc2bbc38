import { request as requestHttp } from 'node:http'
import { request as requestHttps } from 'node:https'
import { setTimeout as delay } from 'node:timers/promises'
import { StartProblem } from './start-problem.ts'

export type HealthQuestion = { host: string; port: number; isHttps: boolean; signal: AbortSignal }

const LIMIT_MS = 30_000

/** Resolves once the front door answers 200 to its health question, asked the way a visitor would. */
export async function waitForHealth(question: HealthQuestion): Promise<void> {
  const deadline = Date.now() + LIMIT_MS
  let last = 'no answer'
  while (Date.now() < deadline) {
    question.signal.throwIfAborted()
    last = await askHealth(question)
    if (last === '200') return
    await delay(100)
  }
  throw new StartProblem(
    `The server started but its health check says "${last}" after ${LIMIT_MS / 1000} s; the logs in the data folder say why.`,
  )
}

/** The status code as text, or why there is none. */
function askHealth({ host, port, isHttps }: HealthQuestion): Promise<string> {
  const everywhere: Record<string, string> = { '0.0.0.0': '127.0.0.1', '::': '::1' }
  return new Promise((resolve) => {
    const where = { host: everywhere[host] ?? host, port, path: '/api/v1/health', timeout: 5000 }
    // Our own front door by its inner address: the certificate is made for the outer names.
    const request = isHttps ? requestHttps({ ...where, rejectUnauthorized: false }) : requestHttp(where)
    request.on('response', (response) => {
      response.resume()
      resolve(String(response.statusCode))
    })
    request.on('timeout', () => request.destroy(new Error('no answer within 5 s')))
    request.on('error', (error) => resolve(error.message))
    request.end()
  })
}
