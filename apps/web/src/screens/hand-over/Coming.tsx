import { Section } from '@/base/ui/Page.tsx'
import { SubjectLink } from '@/parts/hand-over/SubjectLink.tsx'
import styles from './hand-over.module.css'
import { NightList } from './NightList.tsx'
import type { Nights } from './say-once.ts'

/** Nights of hatching and release ahead, clutch by clutch. */
export function Coming({ coming, today }: { coming: Nights[]; today: string }) {
  if (coming.length === 0) return null
  return (
    <Section title="What is coming">
      <ul className={styles.list}>
        {coming.map(({ subject, care, nights }) => (
          <li key={subject.id}>
            <SubjectLink subject={subject} />
            <NightList nights={nights} care={care} today={today} />
          </li>
        ))}
      </ul>
    </Section>
  )
}
