'use client'

import { useQuery } from '@tanstack/react-query'
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Doorway } from '@/parts/doorway/Doorway.tsx'
import { wayInOptions } from '@/parts/session/queries.ts'

/**
 * The bare address: whoever is signed in goes to their rooms. A server that nobody owns yet asks for its first owner, but
 * where there is a demo room one may sign in to that as well.
 */
export function FrontPage() {
  const router = useRouter()
  const way = useQuery(wayInOptions())
  useEffect(() => {
    if (way.data !== undefined) router.replace(way.data)
  }, [way.data, router])
  return (
    <Doorway title="Fryward">
      <Loaded query={way} skeleton={<Bones heights={[4, 4]} />} what="The server">
        {() => <Bones heights={[4, 4]} />}
      </Loaded>
    </Doorway>
  )
}
