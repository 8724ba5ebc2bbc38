'use client'

import { type ComparedBy, comparedBy, type SurvivalComparison } from '@fryward/shared'
import { comparedByLabels, sayComing, sayComparison, sayLeftOut, sayWhole } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { Suspense, useState } from 'react'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { late } from '@/base/ui/late.ts'
import { Card, Section } from '@/base/ui/Page.tsx'
import { comparisonOptions } from '@/parts/survival/queries.ts'
import { curvesHeight, mostDrawn } from './curves-lanes.ts'
import { GroupTable } from './GroupTable.tsx'
import styles from './survival.module.css'
import type { LaidBetween } from './WhichClutches.tsx'

const CurvesChart = late(() => import('./CurvesChart.tsx'), 'CurvesChart')

/** Groups of clutches side by side: what may be concluded and what not, the curves, and the same in figures. */
export function Compare({ range }: { range: LaidBetween }) {
  const room = useRoom()
  const [by, choose] = useState<ComparedBy>('pair')
  const comparison = useQuery(comparisonOptions(room.id, { ...range, by }))
  return (
    <Section title="Side by side">
      <ChoiceChips
        legend="Groups by"
        choices={comparedBy.map((value) => ({ value, label: comparedByLabels[value] }))}
        value={by}
        onChoose={(value) => {
          const chosen = comparedBy.find((one) => one === value)
          if (chosen) choose(chosen)
        }}
      />
      <Loaded query={comparison} skeleton={<Bones heights={[6, 18]} />} what="The comparison">
        {(compared) => <Compared compared={compared} />}
      </Loaded>
    </Section>
  )
}

function Compared({ compared }: { compared: SurvivalComparison }) {
  const room = useRoom()
  const { may, mayNot } = sayComparison(compared, room)
  const drawn = compared.groups.toSorted((a, b) => b.clutches - a.clutches || b.animals - a.animals).slice(0, mostDrawn)
  return (
    <Card>
      <div aria-live="polite">
        <p>
          <strong>{may}</strong>
        </p>
        <p>{mayNot}</p>
      </div>
      {drawn.length > 0 && (
        <>
          <Suspense fallback={<Bones heights={[curvesHeight(drawn.length) / 16]} />}>
            <CurvesChart compared={compared} groups={drawn} sentence={may} />
          </Suspense>
          <p className={styles.key}>
            Share alive from the day of the {sayComing(compared.cares)} on, with the band in which it lies 95 times in
            100. The figures below are how many were still watched; who was moved, placed or put with others leaves the
            watch alive.
            {compared.groups.length > drawn.length &&
              ` The ${mostDrawn} largest groups are drawn; all stand in the table.`}
          </p>
          <GroupTable compared={compared} drawn={drawn} />
        </>
      )}
      {compared.leftOut.length > 0 && (
        <p className={styles.soft}>
          Left out:{' '}
          {compared.leftOut
            .map(({ reason, clutches }) => `${sayWhole(clutches, room)} ${sayLeftOut(reason, compared.cares)}`)
            .join(', ')}
          .
        </p>
      )}
    </Card>
  )
}
