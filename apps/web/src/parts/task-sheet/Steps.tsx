'use client'

import type { TaskStep } from '@fryward/shared'
import { useId } from 'react'
import { PhraseText } from '@/base/quantities/Amount.tsx'
import styles from './sheet.module.css'
import { stepParts } from './step-parts.ts'

/** How it is done: numbered steps, under a heading and numbered anew where some are for one and some for another. */
export function Steps({ steps }: { steps: readonly TaskStep[] }) {
  return stepParts(steps).map((part) => <Part key={part.heading?.text ?? ''} {...part} />)
}

function Part({ heading, steps }: ReturnType<typeof stepParts>[number]) {
  const id = useId()
  const list = (
    <ol className={styles.steps} aria-labelledby={heading && id}>
      {steps.map((step) => (
        <li key={step.text}>
          <PhraseText phrase={step} />
        </li>
      ))}
    </ol>
  )
  if (!heading) return list
  return (
    <section className={styles.part}>
      <h3 id={id}>
        <PhraseText phrase={heading} />
      </h3>
      {list}
    </section>
  )
}
