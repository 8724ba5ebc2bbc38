'use client'

import type { Reach } from '@fryward/shared'
import { sayMoment } from '@fryward/words'
import { serverNow } from '@/base/api/server-clock.ts'
import { CheckBox } from '@/base/forms/CheckBox.tsx'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import styles from '@/parts/gauges/gauges.module.css'
import { whyNoPush } from '@/parts/reach/push.ts'
import { useAddPhone, useChangeReach, useRemovePhone, useSendTrial } from '@/parts/reach/queries.ts'

/** Pushes to this browser, mail, and one to try. */
export function HowTold({ reach }: { reach: Reach }) {
  const room = useRoom()
  const change = useChangeReach(room.id)
  const trial = useSendTrial(room.id)
  return (
    <>
      <Phones reach={reach} />
      {reach.isMailSetUp ? (
        <CheckBox
          label={`By mail to ${reach.mail}`}
          isChecked={reach.alarmsByMail}
          onCheck={(alarmsByMail) => change.mutate(alarmsByMail)}
        />
      ) : (
        <p className={styles.soft}>
          This server sends no mail yet: whoever runs it sets <code>SMTP_URL</code> and <code>MAIL_FROM</code>.
        </p>
      )}
      <FormProblem error={change.error ?? trial.error} />
      <div className={styles.spans}>
        <Button variant="default" isBusy={trial.isPending} onClick={() => trial.mutate(undefined)}>
          Send me one to try
        </Button>
      </div>
      {trial.isSuccess && <p role="status">It goes out within a minute, and stands below.</p>}
    </>
  )
}

function Phones({ reach: { phones, pushKey } }: { reach: Reach }) {
  const room = useRoom()
  const voice = useVoice()
  const add = useAddPhone(room.id)
  const remove = useRemovePhone(room.id)
  const reason = whyNoPush()
  return (
    <>
      <ul className={styles.gauges}>
        {phones.map(({ id, name, createdAt }) => (
          <li key={id} className={styles.head}>
            <span>
              Pushed to: {name}, since {sayMoment(createdAt, serverNow(), voice)}
            </span>
            <Button variant="subtle" aria-label={`Take off: ${name}`} onClick={() => remove.mutate(id)}>
              Take off
            </Button>
          </li>
        ))}
      </ul>
      {reason === null ? (
        <div className={styles.spans}>
          <Button variant="filled" isBusy={add.isPending} onClick={() => add.mutate(pushKey)}>
            Push alarms to this device
          </Button>
        </div>
      ) : (
        <p className={styles.soft}>{reason}</p>
      )}
      <FormProblem error={add.error ?? remove.error} />
    </>
  )
}
