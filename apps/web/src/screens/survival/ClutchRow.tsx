'use client'

import type { SurvivalRow } from '@fryward/shared'
import { broodWords, sayDate, sayWhole, together } from '@fryward/words'
import { useRoom } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { StageBars } from '@/parts/survival/StageBars.tsx'
import { hrefOf } from '@/parts/things/href.ts'
import styles from './survival.module.css'

/** One clutch, or those that shared a tank from the hatch on. */
export function ClutchRow({ row }: { row: SurvivalRow }) {
  const room = useRoom()
  const name = together(row.clutches.map((clutch) => clutch.name))
  return (
    <article className={styles.row} aria-label={name}>
      <h3>
        {row.clutches.map((clutch, index) => (
          <span key={clutch.id}>
            {index > 0 && ' and '}
            <Link href={hrefOf(room.id, clutch) ?? ''}>{clutch.name}</Link>
          </span>
        ))}
      </h3>
      <p className={styles.soft}>
        {together(row.pairs.map((pair) => pair.name))}, {broodWords(row.care).since.toLowerCase()}{' '}
        {sayDate(row.spawnedOn, room)}
        {row.cultures.length > 0 && `, fed from ${together(row.cultures.map((culture) => culture.name))}`}
        {row.mixedOn !== null && `; put together with others ${sayDate(row.mixedOn, room)}`}
      </p>
      <StageBars stages={row.stages} care={row.care} label={`How many of ${name} made it`} />
      <Losses row={row} />
    </article>
  )
}

/** Causes that took most; further ones stand on the page of the clutch. */
const causesShown = 3

function Losses({ row }: { row: SurvivalRow }) {
  const room = useRoom()
  const causes = row.losses
    .slice(0, causesShown)
    .map(({ cause, number }) => `${sayWhole(number, room)} ${cause ?? 'of no known cause'}`)
  if (causes.length === 0 && row.missing === 0) return null
  return (
    <p>
      {causes.length > 0 && `Found dead: ${causes.join(', ')}${row.losses.length > causesShown ? ' and others' : ''}. `}
      {row.missing > 0 && `Missing at a count: ${sayWhole(row.missing, room)}.`}
    </p>
  )
}
