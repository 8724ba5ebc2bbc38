import { Section } from '@/base/ui/Page.tsx'
import styles from './hand-over.module.css'
import type { Trouble } from './say-once.ts'
import { TroubleText } from './TroubleText.tsx'

/** Signs of trouble that somebody saw in the last two days. */
export function Signs({ troubles, now }: { troubles: Trouble[]; now: Date }) {
  if (troubles.length === 0) return null
  return (
    <Section title="Signs of trouble">
      <ul className={styles.list}>
        {troubles.map((one) => (
          <li key={one.seen[0]?.factId}>
            <TroubleText trouble={one} now={now} />
          </li>
        ))}
      </ul>
    </Section>
  )
}
