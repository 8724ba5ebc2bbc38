'use client'

import { useQuery } from '@tanstack/react-query'
import { useParams } from 'next/navigation'
import { TankForm } from '@/features/add/TankForm.tsx'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { Amount } from '@/quantities/Amount.tsx'
import { formatNumber } from '@/quantities/format-number.ts'
import { Link } from '@/ui/Link.tsx'
import { Card, Section, Traits } from '@/ui/Page.tsx'
import { tankKindLabels } from '@/words/labels.ts'
import { hrefOf } from './href.ts'
import { Manage } from './Manage.tsx'
import { tanksOptions } from './queries.ts'
import { type Thing, useThings } from './use-things.ts'
import { VesselPage } from './VesselPage.tsx'
import styles from './vessels.module.css'

export function TankPage() {
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
                { label: 'Salinity', value: formatNumber(tank.salinity) },
                { label: 'Filter', value: tank.hasFilter ? 'yes' : 'none' },
              ]}
            />
            {tank.note && <p>{tank.note}</p>}
          </Card>
          <Inhabitants tankId={tank.id} />
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
