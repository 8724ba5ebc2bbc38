import type { HandOverNote } from '@fryward/shared'
import { WorrySign } from '@/base/ui/Notice.tsx'
import { Section } from '@/base/ui/Page.tsx'
import styles from './hand-over.module.css'
import { Settle } from './Settle.tsx'
import { WorryText } from './WorryText.tsx'

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
