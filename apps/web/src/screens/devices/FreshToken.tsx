'use client'

import { addressOf, type CreatedDevice } from '@fryward/shared'
import { Notice } from '@/base/ui/Notice.tsx'
import styles from '@/parts/gauges/gauges.module.css'

/** The token, this once, in the command that tries it. */
export function FreshToken({ made: { device, token } }: { made: CreatedDevice }) {
  const address = new URL(addressOf('postReadings'), window.location.origin)
  const command = [
    `curl ${address}`,
    `-H 'Authorization: Bearer ${token}'`,
    "-H 'Content-Type: application/json'",
    `-d '{"gauge": "t1", "value": 25.4}'`,
  ].join(' \\\n  ')
  return (
    <Notice title={`The token of ${device.name}: copy it now, it is shown only once`}>
      <p>Add a gauge to it below, named t1 say; then this posts a first reading from any machine that reaches here:</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what may scroll must be reachable by keyboard */}
      <pre className={styles.code} tabIndex={0}>
        {command}
      </pre>
      <p>
        Without a time a reading is of now. Several go in one post as a list, with a time each: <code>"at"</code> in ISO
        8601 with its zone, or in seconds since 1970. SenML and CSV are taken too.
      </p>
    </Notice>
  )
}
