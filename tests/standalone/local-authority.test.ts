import { X509Certificate } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { createServer, request } from 'node:https'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { ensureLocalCertificate } from '@fryward/standalone'
import { afterAll, describe, expect, it } from 'vitest'

const dataDir = mkdtempSync(join(tmpdir(), 'fryward-tls-'))
const now = new Date()
const wish = { dataDir, names: ['localhost', 'fish.example'], addresses: ['127.0.0.1'], now }
const daysLater = (days: number) => new Date(now.getTime() + days * 86_400_000)
const read = (file: string) => readFileSync(file, 'utf8')

describe('the local authority', () => {
  afterAll(() => rmSync(dataDir, { recursive: true }))

  it('signs a certificate that a client accepts which trusts the authority and nothing else', async () => {
    const files = await ensureLocalCertificate(wish)
    const server = createServer({ cert: read(files.certFile), key: read(files.keyFile) }, (_request, answer) =>
      answer.end('hello'),
    )
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
    const address = server.address()
    const port = address !== null && typeof address === 'object' ? address.port : 0
    const ask = (servername: string, ca: string | undefined) =>
      new Promise<number | undefined>((resolve, reject) => {
        const asked = request({ host: '127.0.0.1', port, servername, ca, agent: false }, (answer) => {
          answer.resume()
          resolve(answer.statusCode)
        })
        asked.on('error', reject)
        asked.end()
      })
    expect(await ask('fish.example', read(files.authorityFile))).toBe(200)
    await expect(ask('fish.example', undefined)).rejects.toThrow(/unable to verify|self-signed/)
    await expect(ask('other.example', read(files.authorityFile))).rejects.toThrow(
      "does not match certificate's altnames",
    )
    server.close()
  })

  it('keeps its keys to its owner', async () => {
    const files = await ensureLocalCertificate(wish)
    for (const name of [files.keyFile, join(dataDir, 'tls/ca.key')]) expect(statSync(name).mode & 0o777).toBe(0o600)
  })

  it('makes nothing new while the certificate is good', async () => {
    const before = read((await ensureLocalCertificate(wish)).certFile)
    const again = await ensureLocalCertificate({ ...wish, now: daysLater(360) })
    expect([again.isNew, read(again.certFile)]).toEqual([false, before])
  })

  it('makes a new certificate, and keeps the authority, when an address was added or the end is near', async () => {
    const authority = read((await ensureLocalCertificate(wish)).authorityFile)
    const added = await ensureLocalCertificate({ ...wish, addresses: ['127.0.0.1', '192.0.2.7'] })
    expect(added.isNew).toBe(true)
    expect(new X509Certificate(read(added.certFile)).checkIP('192.0.2.7')).toBe('192.0.2.7')
    const renewed = await ensureLocalCertificate({ ...wish, now: daysLater(370) })
    expect(renewed.isNew).toBe(true)
    expect(Date.parse(new X509Certificate(read(renewed.certFile)).validTo)).toBeGreaterThan(daysLater(760).getTime())
    expect(read(renewed.authorityFile)).toBe(authority)
  })
})
