'use client'

import type { Id } from '@fryward/shared'
import { useState } from 'react'
import { serverNow } from '@/base/api/server-clock.ts'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { useReopen } from './queries.ts'

// As long as the API takes an end back.
const dayMs = 86_400_000

/** The way back for what was ended by mistake, for a day, for those who may end things. */
export function Reopen({ id, name, endedAt, version }: { id: Id; name: string; endedAt: string; version: number }) {
  const may = useMay('manage')
  const reopen = useReopen(useRoom().id)
  const [isRecent] = useState(() => serverNow().getTime() - Date.parse(endedAt) < dayMs)
  if (!may || !isRecent) return null
  return (
    <>
      <FormProblem error={reopen.error} />
      <div>
        <Button isBusy={reopen.isPending} onClick={() => reopen.mutate({ id, name, version })}>
          It has not ended: reopen {name}
        </Button>
      </div>
    </>
  )
}
