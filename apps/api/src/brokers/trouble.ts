const line = (text: string): string =>
  text
    .replaceAll(/[\s\p{C}]+/gu, ' ')
    .trim()
    .slice(0, 200)

/** What stands in the way of hearing a broker, as a sentence that says where to look. */
export function troubleOf(error: unknown, url: string): string {
  const { host, hostname } = new URL(url)
  const code = typeof error === 'object' && error !== null && 'code' in error ? error.code : undefined
  const said = line(error instanceof Error ? error.message : String(error))
  switch (code) {
    // MQTT 3.1.1, table 3.1: why a connection was refused.
    case 1:
      return 'The broker does not speak MQTT 3.1.1.'
    case 2:
      return 'The broker refuses the name that this server connects by.'
    case 3:
      return 'The broker says that it is not available now.'
    case 4:
      return 'The broker refuses the user name or the password. Type both again.'
    case 5:
      return 'The broker does not let this user in. Look at the user name, the password and what the broker allows.'
    case 'ECONNREFUSED':
      return `Nothing listens at ${host}. Look whether the broker runs, and at which port.`
    case 'ENOTFOUND':
    case 'EAI_AGAIN':
      return `No machine is known by the name ${hostname}. Look at the address.`
    case 'ETIMEDOUT':
    case 'EHOSTUNREACH':
    case 'ENETUNREACH':
      return `${host} does not answer. Look whether the machine is on, and at the address.`
    case 'ENOTALLOWED':
      return said
    case 'DEPTH_ZERO_SELF_SIGNED_CERT':
    case 'SELF_SIGNED_CERT_IN_CHAIN':
    case 'UNABLE_TO_VERIFY_LEAF_SIGNATURE':
    case 'UNABLE_TO_GET_ISSUER_CERT_LOCALLY':
      return 'The certificate of the broker is signed by nobody that is believed here. Paste the certificate of its authority.'
    case 'ERR_TLS_CERT_ALTNAME_INVALID':
      return `The certificate of the broker is not for ${hostname}. Use the name that stands in it.`
    case 'CERT_HAS_EXPIRED':
      return 'The certificate of the broker has expired.'
    default:
      return `The connection to the broker failed: ${said || 'it ended without a word'}.`
  }
}
