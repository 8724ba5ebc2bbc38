'use client'

import { sayMoment } from '@fryward/words'
import { serverNow } from '@/base/api/server-clock.ts'
import { deviceVoice } from '@/base/room/device-voice.ts'
import { useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import styles from './forms.module.css'

/** Says that what stands in a form was typed earlier, and offers to start over. */
export function BegunLine({ at, onStartOver }: { at: string; onStartOver: () => void }) {
  const voice = { ...useVoice(), timeZone: deviceVoice().timeZone }
  return (
    <p className={styles.begun} role="status">
      <span>You had begun this, {sayMoment(at, serverNow(), voice)}.</span>
      <Button variant="subtle" onClick={onStartOver}>
        Start over
      </Button>
    </p>
  )
}
