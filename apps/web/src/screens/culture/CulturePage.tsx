'use client'

import type { Culture } from '@fryward/shared'
import { cultureKindLabels, sayMoment, sayNumber, strainLabels } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useParams } from 'next/navigation'
import { Amount } from '@/base/quantities/Amount.tsx'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Card, Traits } from '@/base/ui/Page.tsx'
import { concentratesOptions } from '@/parts/concentrates/queries.ts'
import { CultureForm } from '@/parts/cultures/CultureForm.tsx'
import { culturesOptions } from '@/parts/cultures/queries.ts'
import { FeedLinks } from '@/parts/feed-links/FeedLinks.tsx'
import { GaugesOf } from '@/parts/gauges/GaugesOf.tsx'
import { VesselPage } from '@/parts/thing-page/VesselPage.tsx'
import { Manage } from '@/parts/things/Manage.tsx'
import { Outlook } from './Outlook.tsx'

const sayKind = (culture: Culture) =>
  [
    cultureKindLabels[culture.kind],
    culture.strain && `strain ${strainLabels[culture.strain]}`,
    culture.isBackup && 'backup, left alone',
  ]
    .filter(Boolean)
    .join(', ')

export function CulturePage() {
  const room = useRoom()
  const { id } = useParams<{ id: string }>()
  const cultures = useQuery(culturesOptions(room.id))
  return (
    <VesselPage kind="culture" id={id} query={cultures} lead={sayKind}>
      {(culture) => (
        <>
          <Outlook culture={culture} />
          <CultureTraits culture={culture} all={cultures.data ?? []} />
          <GaugesOf subjectId={culture.id} />
          <FeedLinks of={{ cultureId: culture.id }} isEnded={culture.endedAt !== null} />
          {!culture.endedAt && (
            <Manage
              name={culture.name}
              version={culture.version}
              endable={{ kind: 'culture', id: culture.id }}
              edit={(close) => <CultureForm culture={culture} onDone={close} />}
            />
          )}
        </>
      )}
    </VesselPage>
  )
}

function CultureTraits({ culture, all }: { culture: Culture; all: Culture[] }) {
  const voice = useVoice()
  const room = useRoom()
  const bottle = (useQuery(concentratesOptions(room.id)).data ?? []).find((one) => one.id === culture.concentrateId)
  const fedFrom = bottle ? `${bottle.name}, ${sayNumber(bottle.cellsPerMl, voice)} cells per mL` : 'no bottle said'
  const children = all.filter((one) => one.parentCultureId === culture.id)
  return (
    <Card>
      <Traits
        traits={[
          { label: 'Holds', value: <Amount quantity={{ value: culture.volumeL, unit: 'L' }} /> },
          { label: 'Temperature', value: <Amount quantity={{ value: culture.temperatureC, unit: 'degC' }} /> },
          { label: 'Salinity', value: sayNumber(culture.salinity, voice) },
          // Cysts that hatch are neither fed nor drawn from another vessel.
          ...(culture.kind === 'artemia_hatch' ? [] : [{ label: 'Fed from', value: fedFrom }]),
          { label: 'Started', value: sayMoment(culture.startedAt, new Date(), voice) },
          ...(culture.kind === 'artemia_hatch'
            ? []
            : [{ label: 'From', value: <CultureName id={culture.parentCultureId} all={all} /> }]),
          ...(children.length > 0
            ? [
                {
                  label: 'Parent of',
                  value: children.map((child) => <CultureName key={child.id} id={child.id} all={all} />),
                },
              ]
            : []),
        ]}
      />
      {culture.note && <p>{culture.note}</p>}
    </Card>
  )
}

function CultureName({ id, all }: { id: string | null; all: Culture[] }) {
  const room = useRoom()
  const culture = all.find((one) => one.id === id)
  if (!culture) return 'bought in'
  return <Link href={`/rooms/${room.id}/cultures/${culture.id}`}>{culture.name} </Link>
}
