'use client'

import type { Fact } from '@fryward/shared'
import { useState } from 'react'
import { serverNow } from '@/base/api/server-clock.ts'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { useRestoreFact } from '@/parts/facts/queries.ts'

// As long as the API enters a struck record again.
const dayMs = 86_400_000

/** The way back for a record that was struck out by mistake, for a day. */
export function PutBack({ fact, what }: { fact: Fact; what: string }) {
  const restore = useRestoreFact(useRoom().id, fact.id)
  const [isRecent] = useState(() => serverNow().getTime() - Date.parse(fact.struckAt ?? '') < dayMs)
  if (!isRecent || restore.isSuccess) return null
  return (
    <>
      <FormProblem error={restore.error} />
      <div>
        <Button
          variant="subtle"
          isBusy={restore.isPending}
          aria-label={`It was right: put it back: ${what}`}
          onClick={() => restore.mutate(undefined)}
        >
          It was right: put it back
        </Button>
      </div>
    </>
  )
}
