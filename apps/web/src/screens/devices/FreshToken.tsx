'use client'

import type { CreatedDevice } from '@fryward/shared'
import { Notice } from '@/base/ui/Notice.tsx'
import { Sketches } from './Sketches.tsx'

/** The token, this once, in what tries it. */
export function FreshToken({ made: { device, token } }: { made: CreatedDevice }) {
  return (
    <Notice title={`The token of ${device.name}: copy it now, it is shown only once`}>
      <p>Add a gauge to it below, named t1 say; then this posts a first reading from any machine that reaches here:</p>
      <Sketches device={device} token={token} />
      <p>
        Without a time a reading is of now. Several go in one post as a list, with a time each: <code>"at"</code> in ISO
        8601 with its zone, or in seconds since 1970. SenML and CSV are taken too.
      </p>
    </Notice>
  )
}
