'use client'

import type { LarvalBatch } from '@fryward/shared'
import { broodWords, type NumberVoice, sayDate, sayNumber } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useParams } from 'next/navigation'
import { useDraftKey } from '@/base/outbox/use-draft-key.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Card, Traits } from '@/base/ui/Page.tsx'
import { batchesOptions, useChangeBatch } from '@/parts/batches/queries.ts'
import { clutchesOptions } from '@/parts/clutches/queries.ts'
import { FeedLinks } from '@/parts/feed-links/FeedLinks.tsx'
import { Life } from '@/parts/life/Life.tsx'
import { OtherSpecies } from '@/parts/species/OtherSpecies.tsx'
import { HousedEditForm } from '@/parts/tanks/HousedEditForm.tsx'
import { tanksOptions } from '@/parts/tanks/queries.ts'
import { VesselPage } from '@/parts/thing-page/VesselPage.tsx'
import { Manage } from '@/parts/things/Manage.tsx'
import { PreyInWater } from './PreyInWater.tsx'

export function BatchPage() {
  const room = useRoom()
  const { id } = useParams<{ id: string }>()
  const batches = useQuery(batchesOptions(room.id))
  return (
    <VesselPage kind="larval_batch" id={id} query={batches} lead={(batch) => `Day ${batch.ageDays}`}>
      {(batch) => (
        <>
          <BatchTraits batch={batch} />
          <OtherSpecies id={batch.species} />
          {batch.clutchIds[0] !== undefined && <Life clutchId={batch.clutchIds[0]} since="hatch" />}
          <PreyInWater batchId={batch.id} until={batch.endedAt} />
          <FeedLinks of={{ batchId: batch.id }} isEnded={batch.endedAt !== null} />
          {!batch.endedAt && (
            <Manage
              name={batch.name}
              version={batch.version}
              endable={{ kind: 'larval_batch', id: batch.id }}
              edit={(close) => <Edit batch={batch} onDone={close} />}
            />
          )}
        </>
      )}
    </VesselPage>
  )
}

function Edit({ batch, onDone }: { batch: LarvalBatch; onDone: () => void }) {
  const what = `batch/${batch.id}`
  const update = useChangeBatch(useRoom().id, batch.id, { draftKey: useDraftKey(what), about: batch.name })
  return (
    <HousedEditForm
      thing={batch}
      what={what}
      isBusy={update.isPending}
      error={update.error}
      onSave={(changed) => update.mutate(changed, { onSuccess: onDone })}
      onCancel={onDone}
    />
  )
}

function sayLarvae(number: LarvalBatch['numberNow'], voice: NumberVoice): string {
  if (!number) return 'not counted'
  const about = `about ${sayNumber(number.estimate, voice)}`
  if (number.lower === null || number.upper === null) return about
  return `${about} (${sayNumber(number.lower, voice)} to ${sayNumber(number.upper, voice)})`
}

function BatchTraits({ batch }: { batch: LarvalBatch }) {
  const voice = useVoice()
  const room = useRoom()
  const tanks = useQuery(tanksOptions(room.id)).data ?? []
  const clutches = useQuery(clutchesOptions(room.id)).data ?? []
  const words = broodWords(batch.care)
  return (
    <Card>
      <Traits
        traits={[
          {
            label: words.now,
            value: sayLarvae(batch.numberNow, voice),
          },
          { label: words.night, value: sayDate(batch.hatchedOn, voice) },
          {
            label: 'Tank',
            value: (
              <Link href={`/rooms/${room.id}/tanks/${batch.tankId}`}>
                {tanks.find((tank) => tank.id === batch.tankId)?.name ?? 'tank'}
              </Link>
            ),
          },
          {
            label: 'From',
            value:
              batch.clutchIds.length === 0
                ? 'bought in'
                : batch.clutchIds.map((clutchId, index) => (
                    <span key={clutchId}>
                      {index > 0 && ', '}
                      <Link href={`/rooms/${room.id}/clutches/${clutchId}`}>
                        {clutches.find((clutch) => clutch.id === clutchId)?.name ?? 'clutch'}
                      </Link>
                    </span>
                  )),
          },
        ]}
      />
      {batch.note && <p>{batch.note}</p>}
    </Card>
  )
}
