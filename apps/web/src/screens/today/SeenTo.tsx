'use client'

import type { Station } from '@fryward/shared'
import { stationLabels } from '@fryward/words'
import { useEffect, useRef } from 'react'
import { Button } from '@/base/ui/Button.tsx'
import { stationTitleId } from './StationCard.tsx'
import styles from './today.module.css'

type Props = { stations: Station[]; isUnfolded: boolean; onUnfold: (isUnfolded: boolean) => void }

/** "All seen to: microalgae, larvae." One quiet line for the stops that need nobody; they open in their own places. */
export function SeenTo({ stations, isUnfolded, onUnfold }: Props) {
  const wasUnfolded = useRef(false)
  const [first] = stations
  // They open above this card: bring the first of them to the eye.
  useEffect(() => {
    if (isUnfolded && !wasUnfolded.current && first)
      document.getElementById(stationTitleId(first))?.scrollIntoView({ block: 'center' })
    wasUnfolded.current = isUnfolded
  }, [isUnfolded, first])
  if (stations.length === 0) return null
  return (
    <div className={styles.seenTo}>
      <p>All seen to: {stations.map((station) => stationLabels[station].toLowerCase()).join(', ')}</p>
      <Button
        variant="subtle"
        aria-expanded={isUnfolded}
        aria-label={isUnfolded ? 'Fold what is seen to' : 'Show what is seen to'}
        onClick={() => onUnfold(!isUnfolded)}
      >
        {isUnfolded ? 'Fold' : 'Show'}
      </Button>
    </div>
  )
}
