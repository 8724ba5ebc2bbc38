'use client'

import type { Tank } from '@fryward/shared'
import { sayNumber, tankKindLabels } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useParams } from 'next/navigation'
import { Amount } from '@/base/quantities/Amount.tsx'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Card, Section, Traits } from '@/base/ui/Page.tsx'
import { GaugesOf } from '@/parts/gauges/GaugesOf.tsx'
import { tanksOptions } from '@/parts/tanks/queries.ts'
import { TankForm } from '@/parts/tanks/TankForm.tsx'
import { VesselPage } from '@/parts/thing-page/VesselPage.tsx'
import { hrefOf } from '@/parts/things/href.ts'
import { Manage } from '@/parts/things/Manage.tsx'
import styles from '@/parts/things/things.module.css'
import { type Thing, useThings } from '@/parts/things/use-things.ts'

export function TankPage() {
  const voice = useVoice()
  const room = useRoom()
  const { id } = useParams<{ id: string }>()
  const tanks = useQuery(tanksOptions(room.id))
  return (
    <VesselPage kind="tank" id={id} query={tanks} lead={(tank) => tankKindLabels[tank.kind]}>
      {(tank) => (
        <>
          <Card>
            <Traits
              traits={[
                { label: 'Holds', value: <Amount quantity={{ value: tank.volumeL, unit: 'L' }} /> },
                { label: 'Temperature', value: <Amount quantity={{ value: tank.temperatureC, unit: 'degC' }} /> },
                { label: 'Salinity', value: sayNumber(tank.salinity, voice) },
                { label: 'Filter', value: tank.hasFilter ? 'yes' : 'none' },
                { label: 'Light', value: lightOf(tank) },
              ]}
            />
            {tank.note && <p>{tank.note}</p>}
          </Card>
          <Inhabitants tankId={tank.id} />
          <GaugesOf subjectId={tank.id} />
          {!tank.endedAt && (
            <Manage
              name={tank.name}
              version={tank.version}
              endable={{ kind: 'tank', id: tank.id }}
              edit={(close) => <TankForm tank={tank} onDone={close} />}
            />
          )}
        </>
      )}
    </VesselPage>
  )
}

/** By the rule where a tank for larvae has no hours of its own. */
function lightOf({ kind, lightHours }: Tank) {
  if (lightHours !== null) return <Amount quantity={{ value: lightHours, unit: 'hours' }} />
  return kind === 'larval' ? 'as the rule for larvae says' : 'as the room'
}

function Inhabitants({ tankId }: { tankId: string }) {
  const room = useRoom()
  const { pairs, clutches, batches } = useThings()
  const inside: Thing[] = [
    ...pairs
      .filter((one) => one.tankId === tankId && !one.endedAt)
      .map(({ id, name }) => ({ id, name, kind: 'pair' as const })),
    ...clutches
      .filter((one) => one.tankId === tankId && one.state === 'incubating')
      .map(({ id, name }) => ({ id, name, kind: 'clutch' as const })),
    ...batches
      .filter((one) => one.tankId === tankId && !one.endedAt)
      .map(({ id, name }) => ({ id, name, kind: 'larval_batch' as const })),
  ]
  if (inside.length === 0) return null
  return (
    <Section title="Lives here">
      <ul className={styles.links}>
        {inside.map((thing) => (
          <li key={thing.id}>
            <Link href={hrefOf(room.id, thing) ?? '#'}>{thing.name}</Link>
          </li>
        ))}
      </ul>
    </Section>
  )
}
