'use client'

import type { Pair } from '@fryward/shared'
import { broodWords, notLookedFor, sayClutchState, sayDate, sayEggLookLacks, toPlainDate } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useParams } from 'next/navigation'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Card, Section, Traits } from '@/base/ui/Page.tsx'
import { clutchesOptions } from '@/parts/clutches/queries.ts'
import { PairForm } from '@/parts/pairs/PairForm.tsx'
import { pairsOptions } from '@/parts/pairs/queries.ts'
import { OtherSpecies } from '@/parts/species/OtherSpecies.tsx'
import { speciesOptions } from '@/parts/species/queries.ts'
import { hasNest, nameOfOther } from '@/parts/species/typed-species.ts'
import { tanksOptions } from '@/parts/tanks/queries.ts'
import { VesselPage } from '@/parts/thing-page/VesselPage.tsx'
import { Manage } from '@/parts/things/Manage.tsx'
import styles from '@/parts/things/things.module.css'

export function PairPage() {
  const voice = useVoice()
  const room = useRoom()
  const { id } = useParams<{ id: string }>()
  const pairs = useQuery(pairsOptions(room.id))
  const species = useQuery(speciesOptions()).data ?? []
  const tanks = useQuery(tanksOptions(room.id)).data ?? []
  return (
    <VesselPage
      kind="pair"
      id={id}
      query={pairs}
      lead={(pair) => {
        const known = species.find((one) => one.id === pair.species)
        return known ? (
          <>
            {known.commonName}, <em>{known.scientificName}</em>
          </>
        ) : (
          (nameOfOther(pair.species) ?? pair.species)
        )
      }}
    >
      {(pair) => (
        <>
          <OtherSpecies id={pair.species} />
          <Card>
            <Traits
              traits={[
                {
                  label: 'Home tank',
                  value: (
                    <Link href={`/rooms/${room.id}/tanks/${pair.tankId}`}>
                      {tanks.find((tank) => tank.id === pair.tankId)?.name ?? 'tank'}
                    </Link>
                  ),
                },
                ...(pair.nestSite !== '' || hasNest(pair.species, species)
                  ? [{ label: 'Nest site', value: pair.nestSite || 'not said' }]
                  : []),
                { label: 'Together since', value: pair.formedOn ? sayDate(pair.formedOn, voice) : 'not said' },
                { label: 'Now', value: pair.isResting ? 'resting' : 'spawning' },
              ]}
            />
            {pair.note && <p>{pair.note}</p>}
          </Card>
          <NotLookedFor lacks={pair.eggLookLacks} />
          <Clutches pairId={pair.id} />
          {!pair.endedAt && (
            <Manage
              name={pair.name}
              version={pair.version}
              endable={{ kind: 'pair', id: pair.id }}
              edit={(close) => <PairForm pair={pair} onDone={close} />}
            />
          )}
        </>
      )}
    </VesselPage>
  )
}

/** Why the list does not ask for eggs that float, and until when. */
function NotLookedFor({ lacks }: { lacks: Pair['eggLookLacks'] }) {
  if (lacks.length === 0) return null
  const { why, until } = sayEggLookLacks(lacks)
  return (
    <Notice title={`${notLookedFor}.`}>
      <p>{why}</p>
      <p>{until} Found all the same, they can be recorded below as eggs laid.</p>
    </Notice>
  )
}

function Clutches({ pairId }: { pairId: string }) {
  const voice = useVoice()
  const room = useRoom()
  const clutches = useQuery(clutchesOptions(room.id))
  return (
    <Section title="Clutches">
      <Loaded query={clutches} skeleton={<Bones heights={[3, 3]} />} what="The list of clutches">
        {(data) => {
          const own = data.filter((one) => one.pairId === pairId)
          return own.length === 0 ? (
            <Notice>No eggs recorded yet. When there are, record them below as eggs laid.</Notice>
          ) : (
            <ul className={styles.links}>
              {own.map((clutch) => (
                <li key={clutch.id}>
                  <Link href={`/rooms/${room.id}/clutches/${clutch.id}`}>{clutch.name}</Link>
                  <span className={styles.soft}>
                    {broodWords(clutch.care).since.toLowerCase()}{' '}
                    {sayDate(toPlainDate(clutch.spawnedAt, room.timeZone), voice)},{' '}
                    {sayClutchState(clutch).toLowerCase()}
                  </span>
                </li>
              ))}
            </ul>
          )
        }}
      </Loaded>
    </Section>
  )
}
