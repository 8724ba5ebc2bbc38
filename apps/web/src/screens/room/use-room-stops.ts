'use client'

import { type Id, type Pair, stationOfTank, type Task } from '@fryward/shared'
import {
  cultureKindLabels,
  daysSince,
  notLookedFor,
  sayClutchState,
  sayNight,
  sayNumber,
  sayPercent,
  sayQuantity,
  tankKindLabels,
} from '@fryward/words'
import { type UseQueryResult, useQuery } from '@tanstack/react-query'
import { todayIn } from '@/base/dates/local-time.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { likeliestNight } from '@/parts/clutches/egg-colour.ts'
import { sayDensity } from '@/parts/cultures/say-density.ts'
import { dayOptions } from '@/parts/tasks/queries.ts'
import { useThingQueries } from '@/parts/things/use-things.ts'
import { type RoomCard, type Stop, toStops } from './room-stops.ts'

/** The room as a walk: what stands at each station, with what lives in it and how much is left to do there today. */
export function useRoomStops(): { query: UseQueryResult<unknown>; stops: Stop[] } {
  const room = useRoom()
  const today = todayIn(room.timeZone)
  const { tanks, cultures, pairs, clutches, batches, groups } = useThingQueries()
  // The day's list comes when it comes: the room stands without it.
  const openOf = countOpen(useQuery(dayOptions(room.id, 'today')).data?.tasks)
  const all: UseQueryResult<unknown>[] = [cultures, pairs, clutches, batches, groups]
  const query = all.find((one) => one.data === undefined) ?? tanks
  const litres = (volumeL: number) => sayQuantity({ value: volumeL, unit: 'L' }, room)

  const cultureCards: RoomCard[] = live(cultures.data).map((one) => ({
    station: one.kind === 'microalgae' ? 'microalgae' : 'live_food',
    thing: { id: one.id, kind: 'culture', name: one.name },
    figure: one.kind === 'rotifer' || one.densityNow ? sayDensity(one, room) : undefined,
    note: [cultureKindLabels[one.kind], one.strain, litres(one.volumeL), one.isBackup ? 'backup' : '']
      .filter(Boolean)
      .join(', '),
    open: openOf(one.id),
  }))
  const inhabitants = [
    ...live(pairs.data).map((one) => ({
      tankId: one.tankId,
      thing: { id: one.id, kind: 'pair' as const, name: one.name },
      note: sayPair(one),
      open: openOf(one.id),
    })),
    ...(clutches.data ?? [])
      .filter((one) => one.state === 'incubating')
      .map((one) => {
        const night = likeliestNight(one)
        return {
          tankId: one.tankId,
          thing: { id: one.id, kind: 'clutch' as const, name: one.name },
          note: night
            ? `day ${daysSince(one.spawnedAt, today, room.timeZone)}, likely ${sayNight(night.date, today, room)} (${sayPercent(night.probability, room)})`
            : sayClutchState(one),
          open: openOf(one.id),
        }
      }),
    ...live(batches.data).map((one) => ({
      tankId: one.tankId,
      thing: { id: one.id, kind: 'larval_batch' as const, name: one.name },
      note: `day ${one.ageDays}${one.numberNow ? `, about ${sayNumber(one.numberNow.estimate, room)}` : ''}`,
      open: openOf(one.id),
    })),
    ...live(groups.data).map((one) => ({
      tankId: one.tankId,
      thing: { id: one.id, kind: 'juvenile_group' as const, name: one.name },
      note: `day ${one.ageDays}${one.numberNow === null ? '' : `, ${one.numberNow} fish`}`,
      open: openOf(one.id),
    })),
  ]
  const isInhabited = new Set(inhabitants.map((one) => one.tankId))
  const tankCards: RoomCard[] = (tanks.data ?? [])
    .filter((one) => one.endedAt === null || isInhabited.has(one.id))
    .map((one) => ({
      station: stationOfTank[one.kind],
      thing: { id: one.id, kind: 'tank', name: one.name },
      note: `${tankKindLabels[one.kind]}, ${litres(one.volumeL)}${one.endedAt === null ? '' : ', out of use'}`,
      open: openOf(one.id),
      inhabitants: one.kind === 'storage' ? undefined : inhabitants.filter(({ tankId }) => tankId === one.id),
    }))
  return { query, stops: toStops([...cultureCards, ...tankCards], room.stationOrder) }
}

function sayPair({ isResting, nestSite, eggLookLacks }: Pair): string {
  if (isResting) return 'resting'
  const where = nestSite || 'pair'
  return eggLookLacks.length === 0 ? where : `${where}, ${notLookedFor.toLowerCase()}`
}

const live = <T extends { endedAt: string | null }>(things: T[] | undefined) =>
  (things ?? []).filter((one) => one.endedAt === null)

/** Tasks still open today, thing by thing. */
function countOpen(tasks: Task[] | undefined): (id: Id) => number {
  const counts = new Map<Id, number>()
  for (const { state, subject } of tasks ?? [])
    if (state === 'open') counts.set(subject.id, (counts.get(subject.id) ?? 0) + 1)
  return (id) => counts.get(id) ?? 0
}
