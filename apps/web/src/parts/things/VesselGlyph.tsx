'use client'

import type { Culture, Id, SubjectKind } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { useRoom } from '@/base/room/room-context.tsx'
import { BatchGlyph } from '@/parts/batches/BatchGlyph.tsx'
import { batchesOptions } from '@/parts/batches/queries.ts'
import { ClutchGlyph } from '@/parts/clutches/ClutchGlyph.tsx'
import { clutchesOptions } from '@/parts/clutches/queries.ts'
import { BucketGlyph } from '@/parts/cultures/BucketGlyph.tsx'
import { ConeGlyph } from '@/parts/cultures/ConeGlyph.tsx'
import { fillAgainstUsual } from '@/parts/cultures/density-fill.ts'
import { culturesOptions, usualDensitiesOptions } from '@/parts/cultures/queries.ts'
import { PairGlyph } from '@/parts/pairs/PairGlyph.tsx'
import { tanksOptions } from '@/parts/tanks/queries.ts'
import { TankGlyph } from '@/parts/tanks/TankGlyph.tsx'

/** Old enough for the larval stroke to have fins: settled fish. */
const settledAgeDays = 30

/** The drawing of a thing, the same everywhere it appears. It stands beside the name and is silent to a screen reader. */
export function VesselGlyph({ kind, id, size = 40 }: { kind: SubjectKind; id: Id; size?: number }) {
  if (kind === 'culture') return <LiveBucket id={id} size={size} />
  if (kind === 'clutch') return <LiveClutch id={id} size={size} />
  if (kind === 'larval_batch') return <LiveBatch id={id} size={size} />
  if (kind === 'juvenile_group') return <BatchGlyph size={size} ageDays={settledAgeDays} />
  if (kind === 'pair') return <PairGlyph size={size} />
  if (kind === 'tank') return <LiveTank id={id} size={size} />
  return null
}

function LiveBucket({ id, size }: { id: Id; size: number }) {
  const room = useRoom()
  const cultures = useQuery(culturesOptions(room.id))
  const usual = useQuery(usualDensitiesOptions(room.id))
  // Drawn once it is known what to measure by, so that no bucket fills and empties while a page loads.
  const isKnown = !usual.isPending
  const culture: Culture | undefined = cultures.data?.find((one) => one.id === id)
  if (culture?.kind === 'artemia_hatch') return <ConeGlyph size={size} />
  return (
    <BucketGlyph
      size={size}
      fill={culture && isKnown ? fillAgainstUsual(culture, usual.data?.get(id)) : null}
      isGreen={culture?.kind === 'microalgae'}
      hasBackupMark={culture?.isBackup ?? false}
    />
  )
}

function LiveTank({ id, size }: { id: Id; size: number }) {
  const tanks = useQuery(tanksOptions(useRoom().id))
  const tank = tanks.data?.find((one) => one.id === id)
  return <TankGlyph size={size} isStored={tank?.kind === 'storage'} />
}

function LiveClutch({ id, size }: { id: Id; size: number }) {
  const clutches = useQuery(clutchesOptions(useRoom().id))
  const clutch = clutches.data?.find((one) => one.id === id)
  return <ClutchGlyph size={size} clutch={clutch} />
}

function LiveBatch({ id, size }: { id: Id; size: number }) {
  const batches = useQuery(batchesOptions(useRoom().id))
  const batch = batches.data?.find((one) => one.id === id)
  return <BatchGlyph size={size} ageDays={batch?.ageDays ?? 0} />
}
