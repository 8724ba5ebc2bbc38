'use client'

import type { Me } from '@fryward/shared'
import { roleLabels } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'
import { Bones } from '@/base/ui/Bones.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Doorway } from '@/parts/doorway/Doorway.tsx'
import doorway from '@/parts/doorway/doorway.module.css'
import { meOptions } from '@/parts/session/me.ts'
import { SignOutButton } from '@/parts/session/SignOutButton.tsx'

/** Straight in when there is only one room to choose, unless one came here to choose (`?choose=1`). */
export function RoomsPage() {
  const router = useRouter()
  const me = useQuery(meOptions())
  const only = me.data?.rooms.length === 1 ? me.data.rooms[0] : undefined
  useEffect(() => {
    const cameToChoose = new URLSearchParams(window.location.search).has('choose')
    if (only && !cameToChoose) router.replace(`/rooms/${only.id}/today`)
  }, [only, router])
  return (
    <Doorway title="Rooms">
      <Loaded query={me} skeleton={<Bones heights={[5, 5]} />} what="The list of rooms">
        {(data) => <RoomChoice me={data} />}
      </Loaded>
    </Doorway>
  )
}

function RoomChoice({ me }: { me: Me }) {
  return (
    <>
      {me.rooms.length === 0 && (
        <Notice title="No room yet">
          <p>
            {me.canCreateRooms
              ? 'Set up your own: a name, the hours of light, and what lives in it.'
              : 'Ask the owner of a room for an invitation link.'}
          </p>
        </Notice>
      )}
      <ul className={doorway.rooms}>
        {me.rooms.map((room) => (
          <li key={room.id}>
            <Link className={doorway.room} href={`/rooms/${room.id}/today`}>
              <strong>{room.name}</strong>
              {roleLabels[room.role]}
            </Link>
          </li>
        ))}
      </ul>
      {me.canCreateRooms && (
        <LinkButton href="/rooms/new" variant={me.rooms.length === 0 ? 'filled' : 'default'}>
          Set up a room
        </LinkButton>
      )}
      <SignOutButton name={me.user.name} />
    </>
  )
}
