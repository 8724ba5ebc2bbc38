'use client'

import type { HandOverNote } from '@fryward/shared'
import { sentenceOf } from '@/base/api/problem.ts'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { useSettleWorry } from '@/parts/hand-over/queries.ts'

/** Says that a worry is over. */
export function Settle({ worry }: { worry: HandOverNote }) {
  const may = useMay('record')
  const settle = useSettleWorry(useRoom().id)
  const toast = useToast()
  const end = () => settle.mutate(worry.id, { onError: (error) => toast({ text: sentenceOf(error) }) })
  if (!may) return null
  return (
    <Button variant="default" isBusy={settle.isPending} onClick={end} aria-label={`It is over: ${worry.text}`}>
      It is over
    </Button>
  )
}
