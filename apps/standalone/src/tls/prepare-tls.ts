import type { Settings } from '../settings.ts'
import { ensureLocalCertificate } from './local-authority.ts'
import { findReachableNames } from './reachable-names.ts'

export type Tls = { certFile: string; keyFile: string; authorityFile: string | undefined }

/** The certificate that the settings ask for, made where it is to be our own; undefined without HTTPS. */
export async function prepareTls(settings: Settings): Promise<Tls | undefined> {
  if (settings.TLS_CERT !== undefined && settings.TLS_KEY !== undefined) {
    return { certFile: settings.TLS_CERT, keyFile: settings.TLS_KEY, authorityFile: undefined }
  }
  if (settings.TLS === 'off') return undefined
  const reachable = findReachableNames(settings.PUBLIC_URL)
  return ensureLocalCertificate({ dataDir: settings.DATA_DIR, ...reachable, now: new Date() })
}
