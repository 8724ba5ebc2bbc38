'use client'

import { useEffect, useRef } from 'react'
import { Button } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import styles from './sheet.module.css'

type Props = { questions: Record<string, string>; onYes: () => void; onNo: () => void; isBusy: boolean }

/** An improbable value is read back before it is booked. */
export function Confirm({ questions, onYes, onNo, isBusy }: Props) {
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => place.current?.focus(), [])
  return (
    <div ref={place} tabIndex={-1} className={styles.foot}>
      <Notice tone="worry" title="Is this right?">
        <ul className={styles.plainList}>
          {Object.entries(questions).map(([name, question]) => (
            <li key={name}>{question}</li>
          ))}
        </ul>
        <Button variant="filled" isWide onClick={onNo}>
          Look at it again
        </Button>
        <Button variant="default" isWide onClick={onYes} isBusy={isBusy}>
          Yes, it is right
        </Button>
      </Notice>
    </div>
  )
}
