'use client'

import type { CommandAnswer, CommandId, Id } from '@fryward/shared'
import { useMutation } from '@tanstack/react-query'
import { useEffect, useState } from 'react'
import { usePerson } from '@/base/room/person-context.tsx'
import { loadOutbox } from './load-outbox.ts'
import type { Meant } from './meant.ts'

type After<K extends CommandId, I> = {
  onSuccess?: (answer: CommandAnswer<K>, input: I) => unknown
  onSettled?: () => unknown
  /** Whoever means it takes the answer from its promise, which comes even where their place has just gone from the screen. */
  isHeardAfter?: boolean
}

// A list may move on before the answer to a tap on it comes; what takes longer is the queue's to tell. from memory
const lingerMs = 5_000

/**
 * A write that outlives the page: kept on the device when it is meant, then sent until it has an answer. Its id is kept
 * until then, so that the same thing meant twice is one command. Leaving the screen leaves it to the queue.
 */
export function useCommand<K extends CommandId, I>(
  route: K,
  mean: (input: I) => Meant<K> | Promise<Meant<K>>,
  { isHeardAfter = false, ...after }: After<K, I>,
) {
  const person = usePerson()
  const place = usePlace(isHeardAfter ? lingerMs : 0)
  return useMutation({
    mutationFn: async (input: I): Promise<CommandAnswer<K>> => {
      if (person === null) throw new Error(`${route} is for whoever is signed in`)
      const meant = await mean(input)
      const { putCommand, leaveCommands } = await loadOutbox()
      const answer = putCommand({ route, person, meant, ids: place.ids })
      // An undo from a message that outlived its line, a picture made ready too late: nobody is there to hear a refusal.
      if (!place.isThere) leaveCommands(takeAll(place.ids))
      return answer
    },
    ...after,
  })
}

/** A place on the screen, and what it has on its way, by its parameters. */
type Place = { isThere: boolean; ids: Map<string, Id>; timer?: number }

/** What is on its way when its place goes from the screen is the queue's alone from then on. */
function usePlace(lingersMs: number): Place {
  const [place] = useState<Place>(() => ({ isThere: true, ids: new Map() }))
  useEffect(() => {
    place.isThere = true
    window.clearTimeout(place.timer)
    return () => {
      if (lingersMs === 0) leave(place)
      else place.timer = window.setTimeout(leave, lingersMs, place)
    }
  }, [place, lingersMs])
  return place
}

function leave(place: Place): void {
  place.isThere = false
  const left = takeAll(place.ids)
  if (left.length > 0) void loadOutbox().then(({ leaveCommands }) => leaveCommands(left))
}

function takeAll(ids: Map<string, Id>): Id[] {
  const all = [...ids.values()]
  ids.clear()
  return all
}
