'use client'

import type { Id } from '@fryward/shared'
import { useInfiniteQuery } from '@tanstack/react-query'
import { sayMoment } from '@/dates/say.ts'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { formatNumber } from '@/quantities/format-number.ts'
import { Section } from '@/ui/Page.tsx'
import { countTargetLabels } from '@/words/labels.ts'
import { factsOptions } from './queries.ts'
import styles from './vessels.module.css'

const shown = 6

/** The last counts of prey in the water, newest first. */
export function PreyCounts({ batchId }: { batchId: Id }) {
  const room = useRoom()
  const pages = useInfiniteQuery(factsOptions(room.id, batchId))
  const counts = (pages.data?.pages.flatMap((page) => page.facts) ?? []).flatMap((fact) => {
    if (fact.kind !== 'count' || fact.struckAt || fact.data.volumeMl === undefined) return []
    const mean = fact.data.animals.reduce((sum, one) => sum + one, 0) / fact.data.animals.length
    return [{ id: fact.id, at: fact.at, of: fact.data.of, perMl: (mean * fact.data.dilution) / fact.data.volumeMl }]
  })
  if (counts.length === 0) return null
  return (
    <Section title="Prey in the water">
      <ul className={styles.links}>
        {counts.slice(0, shown).map((count) => (
          <li key={count.id}>
            <strong>
              {formatNumber(count.perMl)} per mL {countTargetLabels[count.of].toLowerCase()}
            </strong>
            <span className={styles.soft}>{sayMoment(count.at, new Date(), room.timeZone)}</span>
          </li>
        ))}
      </ul>
    </Section>
  )
}
