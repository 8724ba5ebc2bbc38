import { createPublicKey, X509Certificate } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { writeFileAtomically } from '../write-file.ts'
import { makeAuthority, makeServerCertificate } from './certificates.ts'

export type ServerCertificate = {
  certFile: string
  keyFile: string
  /** What a phone installs once to trust this server. */
  authorityFile: string
  isNew: boolean
}

const DAY_MS = 86_400_000
const RENEW_BEFORE_DAYS = 30 // common practice

export type CertificateWish = { dataDir: string; names: string[]; addresses: string[]; now: Date }

/**
 * The server's certificate under `dataDir`/tls from our own authority, both made at the first call. The authority is never
 * made again (phones hold it); the certificate is, when it is about to end or lacks a wanted name or address.
 */
export async function ensureLocalCertificate({
  dataDir,
  names,
  addresses,
  now,
}: CertificateWish): Promise<ServerCertificate> {
  const folder = join(dataDir, 'tls')
  const files = {
    authorityFile: join(folder, 'ca.crt'),
    authorityKeyFile: join(folder, 'ca.key'),
    certFile: join(folder, 'server.crt'),
    keyFile: join(folder, 'server.key'),
  }
  if (!existsSync(files.authorityFile)) {
    const made = await makeAuthority(now)
    writeFileAtomically(files.authorityKeyFile, made.keyPem) // the key first: a certificate without one would be kept for ever
    writeFileAtomically(files.authorityFile, made.certificatePem, 0o644)
  }
  const authority = {
    certificatePem: readFileSync(files.authorityFile, 'utf8'),
    keyPem: readFileSync(files.authorityKeyFile, 'utf8'),
  }
  const isNew = !isStillGood(files, { names, addresses, now })
  if (isNew) {
    const made = await makeServerCertificate({ authority, names, addresses, now })
    writeFileAtomically(files.keyFile, made.keyPem)
    writeFileAtomically(files.certFile, made.certificatePem, 0o644)
  }
  return { certFile: files.certFile, keyFile: files.keyFile, authorityFile: files.authorityFile, isNew }
}

type Wanted = { names: string[]; addresses: string[]; now: Date }

function isStillGood(files: { certFile: string; keyFile: string; authorityFile: string }, wanted: Wanted): boolean {
  if (!existsSync(files.certFile) || !existsSync(files.keyFile)) return false
  const certificate = new X509Certificate(readFileSync(files.certFile))
  const authority = new X509Certificate(readFileSync(files.authorityFile))
  const endsInMs = Date.parse(certificate.validTo) - wanted.now.getTime()
  return (
    certificate.verify(authority.publicKey) &&
    // A kill between the two writes leaves a key that does not fit.
    certificate.publicKey.export({ type: 'spki', format: 'pem' }) === publicPemOf(files.keyFile) &&
    endsInMs > RENEW_BEFORE_DAYS * DAY_MS &&
    wanted.names.every((name) => certificate.checkHost(name) !== undefined) &&
    wanted.addresses.every((address) => certificate.checkIP(address) !== undefined)
  )
}

function publicPemOf(keyFile: string): string {
  return createPublicKey(readFileSync(keyFile)).export({ type: 'spki', format: 'pem' }).toString()
}
