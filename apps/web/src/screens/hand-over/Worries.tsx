import type { HandOverNote } from '@fryward/shared'
import { WorrySign } from '@/base/ui/Notice.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { Settle } from '@/parts/hand-over/Settle.tsx'
import { WorryText } from '@/parts/hand-over/WorryText.tsx'
import styles from './hand-over.module.css'

/** Open worries, until somebody says that they are over. */
export function Worries({ worries, now }: { worries: HandOverNote[]; now: Date }) {
  if (worries.length === 0) return null
  return (
    <Section title="Open worries">
      <ul className={styles.list}>
        {worries.map((worry) => (
          <li key={worry.id} className={styles.worry}>
            <WorrySign />
            <WorryText worry={worry} now={now} />
            <Settle worry={worry} />
          </li>
        ))}
      </ul>
    </Section>
  )
}
