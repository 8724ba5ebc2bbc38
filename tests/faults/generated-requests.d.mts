export type MadeUp = {
  id: string
  method: string
  url: string
  headers: Record<string, string>
  body: string | Buffer | undefined
}
export function chance(seed: number): () => number
export function requestsOf(
  description: object,
  from: { random: () => number; known: Record<string, string[]> },
): () => MadeUp
export function bytesOf(random: () => number): Buffer
export function sendBytes(address: { host: string; port: number }, bytes: Buffer, patienceMs: number): Promise<string>
export function sendRequest(
  origin: string,
  request: MadeUp,
  how: { cookie: string | undefined; patienceMs: number },
): Promise<string>
