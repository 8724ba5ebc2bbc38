import 'reflect-metadata' // before x509, whose container asks for it
import { randomBytes, webcrypto } from 'node:crypto'
import * as x509 from '@peculiar/x509'

export type PemPair = { certificatePem: string; keyPem: string }

const KEY = { name: 'ECDSA', namedCurve: 'P-256' } as const
const SIGNING = { name: 'ECDSA', hash: 'SHA-256' } as const
const DAY_MS = 86_400_000
const AUTHORITY_DAYS = 3650 // from memory: as long as a phone keeps it; making it again means installing it again
const SERVER_DAYS = 397 // from memory: browsers refuse certificates that last longer than 398 days

/** A new authority that may sign server certificates and no further authorities. */
export async function makeAuthority(now: Date): Promise<PemPair> {
  const keys = await webcrypto.subtle.generateKey(KEY, true, ['sign', 'verify'])
  const certificate = await x509.X509CertificateGenerator.createSelfSigned({
    serialNumber: newSerial(),
    name: `CN=Fryward local authority ${randomBytes(3).toString('hex')}`,
    notBefore: dayBefore(now),
    notAfter: daysAfter(now, AUTHORITY_DAYS),
    signingAlgorithm: SIGNING,
    keys,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  })
  return { certificatePem: `${certificate.toString('pem')}\n`, keyPem: await toPem(keys.privateKey) }
}

export type ServerCertificateWish = { authority: PemPair; names: string[]; addresses: string[]; now: Date }

/** A server certificate for host names and IP addresses, signed by `authority`; the file holds the chain. */
export async function makeServerCertificate(wish: ServerCertificateWish): Promise<PemPair> {
  const { authority, names, addresses, now } = wish
  const issuer = new x509.X509Certificate(authority.certificatePem)
  const signingKey = await webcrypto.subtle.importKey('pkcs8', fromPem(authority.keyPem), KEY, false, ['sign'])
  const keys = await webcrypto.subtle.generateKey(KEY, true, ['sign', 'verify'])
  const certificate = await x509.X509CertificateGenerator.create({
    serialNumber: newSerial(),
    subject: `CN=${names[0] ?? addresses[0] ?? 'localhost'}`,
    issuer: issuer.subject,
    notBefore: dayBefore(now),
    notAfter: daysAfter(now, SERVER_DAYS),
    signingAlgorithm: SIGNING,
    publicKey: keys.publicKey,
    signingKey,
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension([
        ...names.map((value) => ({ type: 'dns' as const, value })),
        ...addresses.map((value) => ({ type: 'ip' as const, value })),
      ]),
      await x509.AuthorityKeyIdentifierExtension.create(issuer.publicKey),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  })
  return {
    certificatePem: `${certificate.toString('pem')}\n${authority.certificatePem}`,
    keyPem: await toPem(keys.privateKey),
  }
}

/** Positive, 16 bytes: no two certificates of one authority may share it. */
function newSerial(): string {
  const bytes = randomBytes(16)
  bytes[0] = (bytes[0]! & 0x7f) | 0x40
  return bytes.toString('hex')
}

/** Phones' clocks run behind; a certificate that begins tomorrow is no certificate. */
function dayBefore(now: Date): Date {
  return new Date(now.getTime() - DAY_MS)
}

function daysAfter(now: Date, days: number): Date {
  return new Date(now.getTime() + days * DAY_MS)
}

async function toPem(key: webcrypto.CryptoKey): Promise<string> {
  return `${x509.PemConverter.encode(await webcrypto.subtle.exportKey('pkcs8', key), 'PRIVATE KEY')}\n`
}

function fromPem(pem: string): ArrayBuffer {
  return x509.PemConverter.decodeFirst(pem)
}
