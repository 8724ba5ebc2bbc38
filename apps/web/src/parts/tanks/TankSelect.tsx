'use client'

import { useQuery } from '@tanstack/react-query'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { tanksOptions } from './queries.ts'

type Props = { label: string; value: string; onChoose: (tankId: string) => void }

/** One of the room's tanks in use; in a room without any, the way to the first. */
export function TankSelect({ label, value, onChoose }: Props) {
  const room = useRoom()
  const tanks = useQuery(tanksOptions(room.id))
  const inUse = (tanks.data ?? []).filter((tank) => tank.endedAt === null || tank.id === value)
  if (tanks.data && inUse.length === 0)
    return (
      <Notice title="A tank comes first">
        <LinkButton href={`/rooms/${room.id}/add?what=tank`} variant="default">
          Add a tank
        </LinkButton>
      </Notice>
    )
  return (
    <SelectBox
      label={label}
      isRequired
      value={value}
      onChoose={onChoose}
      choices={[
        ...(value === '' ? [{ value: '', label: 'choose' }] : []),
        ...inUse.map((tank) => ({ value: tank.id, label: tank.name })),
      ]}
    />
  )
}
