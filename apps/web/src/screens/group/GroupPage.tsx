'use client'

import type { JuvenileGroup } from '@fryward/shared'
import { sayDate } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useParams } from 'next/navigation'
import { useDraftKey } from '@/base/outbox/use-draft-key.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Card, Traits } from '@/base/ui/Page.tsx'
import { batchesOptions } from '@/parts/batches/queries.ts'
import { groupsOptions, useChangeGroup } from '@/parts/groups/queries.ts'
import { OtherSpecies } from '@/parts/species/OtherSpecies.tsx'
import { HousedEditForm } from '@/parts/tanks/HousedEditForm.tsx'
import { tanksOptions } from '@/parts/tanks/queries.ts'
import { VesselPage } from '@/parts/thing-page/VesselPage.tsx'
import { Manage } from '@/parts/things/Manage.tsx'
import { Placings } from './Placings.tsx'

export function GroupPage() {
  const room = useRoom()
  const { id } = useParams<{ id: string }>()
  const groups = useQuery(groupsOptions(room.id))
  return (
    <VesselPage kind="juvenile_group" id={id} query={groups} lead={(group) => `Day ${group.ageDays}`}>
      {(group) => (
        <>
          <GroupTraits group={group} />
          <OtherSpecies id={group.species} />
          <Placings group={group} />
          {!group.endedAt && (
            <Manage
              name={group.name}
              version={group.version}
              endable={{ kind: 'juvenile_group', id: group.id }}
              edit={(close) => <Edit group={group} onDone={close} />}
            />
          )}
        </>
      )}
    </VesselPage>
  )
}

function Edit({ group, onDone }: { group: JuvenileGroup; onDone: () => void }) {
  const what = `group/${group.id}`
  const update = useChangeGroup(useRoom().id, group.id, { draftKey: useDraftKey(what), about: group.name })
  return (
    <HousedEditForm
      thing={group}
      what={what}
      isBusy={update.isPending}
      error={update.error}
      onSave={(changed) => update.mutate(changed, { onSuccess: onDone })}
      onCancel={onDone}
    />
  )
}

function GroupTraits({ group }: { group: JuvenileGroup }) {
  const voice = useVoice()
  const room = useRoom()
  const tanks = useQuery(tanksOptions(room.id)).data ?? []
  const batches = useQuery(batchesOptions(room.id)).data ?? []
  return (
    <Card>
      <Traits
        traits={[
          { label: 'Fish now', value: group.numberNow ?? 'not counted' },
          { label: 'Placed', value: group.placed },
          { label: 'Kept for breeding', value: group.kept },
          { label: 'Culled', value: group.culled },
          { label: 'Lost', value: group.lost },
          { label: 'Settled', value: sayDate(group.settledOn, voice) },
          {
            label: 'Tank',
            value: (
              <Link href={`/rooms/${room.id}/tanks/${group.tankId}`}>
                {tanks.find((tank) => tank.id === group.tankId)?.name ?? 'tank'}
              </Link>
            ),
          },
          {
            label: 'From',
            value: group.fromBatchId ? (
              <Link href={`/rooms/${room.id}/batches/${group.fromBatchId}`}>
                {batches.find((batch) => batch.id === group.fromBatchId)?.name ?? 'a batch'}
              </Link>
            ) : (
              'bought in'
            ),
          },
        ]}
      />
      {group.note && <p>{group.note}</p>}
    </Card>
  )
}
