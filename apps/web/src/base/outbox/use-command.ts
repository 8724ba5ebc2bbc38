'use client'

import type { CommandAnswer, CommandId, Id } from '@fryward/shared'
import { useMutation } from '@tanstack/react-query'
import { useEffect, useRef } from 'react'
import { usePerson } from '@/base/room/person-context.tsx'
import { loadOutbox } from './load-outbox.ts'
import type { Meant } from './meant.ts'

type After<K extends CommandId, I> = {
  onSuccess?: (answer: CommandAnswer<K>, input: I) => unknown
  onSettled?: () => unknown
}

/**
 * A write that outlives the page: kept on the device when it is meant, then sent until it has an answer. Its id is kept
 * until then, so that the same thing meant twice is one command. Leaving the screen leaves it to the queue.
 */
export function useCommand<K extends CommandId, I>(
  route: K,
  mean: (input: I) => Meant<K> | Promise<Meant<K>>,
  after: After<K, I>,
) {
  const person = usePerson()
  /** What is on its way, by its address. */
  const ids = useRef(new Map<string, Id>())
  useLeaving(ids.current)
  return useMutation({
    mutationFn: async (input: I): Promise<CommandAnswer<K>> => {
      if (person === null) throw new Error(`${route} is for whoever is signed in`)
      const meant = await mean(input)
      const { putCommand } = await loadOutbox()
      return putCommand({ route, person, meant, ids: ids.current })
    },
    ...after,
  })
}

/** What is on its way when its form goes from the screen is the queue's alone from then on. */
function useLeaving(ids: Map<string, Id>): void {
  useEffect(
    () => () => {
      const left = [...ids.values()]
      ids.clear()
      if (left.length > 0) void loadOutbox().then(({ leaveCommands }) => leaveCommands(left))
    },
    [ids],
  )
}
