'use client'

import { useQuery } from '@tanstack/react-query'
import { useRouter } from 'next/navigation'
import { useEffect } from 'react'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Doorway } from '@/parts/doorway/Doorway.tsx'
import { serverOptions } from '@/parts/session/queries.ts'

/** The bare address: a server nobody owns yet asks for its first owner, any other shows the rooms. */
export function FrontPage() {
  const router = useRouter()
  const server = useQuery(serverOptions())
  const isClaimed = server.data?.isClaimed
  useEffect(() => {
    if (isClaimed !== undefined) router.replace(isClaimed ? '/rooms' : '/claim')
  }, [isClaimed, router])
  return (
    <Doorway title="Fryward">
      <Loaded query={server} skeleton={<Bones heights={[4, 4]} />} what="The server">
        {() => <Bones heights={[4, 4]} />}
      </Loaded>
    </Doorway>
  )
}
