import { describe, expect, it } from 'vitest'
import { newId } from '@/testing/made-up.ts'
import { carla, keptNote, keptPhoto, sam } from '@/testing/made-up-commands.ts'
import { headOf, laneOf, lanesOf, seeQueue } from './lanes.ts'

const [here, there] = [newId(), newId()]
const refusal = { code: 'stale_version', detail: 'Changed meanwhile.', status: 409 } as const
const seenBy = (personId: string | null) => ({ personId, stuck: 'network' as const, isLasting: true })

describe('lanes', () => {
  it('are a room each, and its photos apart', () => {
    const queue = [keptNote(here), keptPhoto(here), keptNote(there), keptNote(here)]
    expect(lanesOf(queue, carla.id)).toEqual([here, `${here}/photos`, there])
  })

  it('go on with what was kept first, past what was refused and what is another’s', () => {
    const [refused, others, first, second] = [
      keptNote(here, carla, { refusal }),
      keptNote(here, sam),
      keptNote(here),
      keptNote(here),
    ]
    const queue = [refused, others, keptNote(there), first, second]
    expect(headOf(queue, here, carla.id)).toBe(first)
    expect(headOf([refused, others], laneOf(refused.command), carla.id)).toBeUndefined()
    expect(lanesOf([refused, others], carla.id)).toEqual([])
  })
})

describe('what a page sees of the queue', () => {
  it('is one’s own in its order; of others how much, and nothing else', () => {
    const [waiting, refused] = [keptNote(here), keptNote(here, carla, { refusal })]
    const seen = seeQueue([keptNote(here, sam), waiting, refused, keptNote(there, sam)], seenBy(carla.id))
    expect(seen).toEqual({
      waiting: [waiting],
      refused: [refused],
      others: [{ personId: 'sam', name: 'Sam', count: 2 }],
      ...{ stuck: 'network', isLasting: true },
    })
  })

  it('is nobody’s own while nobody is signed in, and nothing is stuck where nothing waits', () => {
    const seen = seeQueue([keptNote(here)], seenBy(null))
    expect([seen.waiting, seen.refused, seen.stuck]).toEqual([[], [], null])
    expect(seen.others).toEqual([{ personId: 'carla', name: 'Carla', count: 1 }])
  })
})
