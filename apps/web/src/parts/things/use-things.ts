'use client'

import type { CareKind, Id, SubjectKind } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { useRoom } from '@/base/room/room-context.tsx'
import { batchesOptions } from '@/parts/batches/queries.ts'
import { clutchesOptions } from '@/parts/clutches/queries.ts'
import { culturesOptions } from '@/parts/cultures/queries.ts'
import { groupsOptions } from '@/parts/groups/queries.ts'
import { pairsOptions } from '@/parts/pairs/queries.ts'
import { tanksOptions } from '@/parts/tanks/queries.ts'

export type Thing = {
  id: Id
  kind: SubjectKind
  name: string
  /** Where the eggs of a clutch or batch are or were. */
  care?: CareKind | undefined
}

/** The lists of everything in the room that has a page, each as its query. */
export function useThingQueries() {
  const { id } = useRoom()
  return {
    tanks: useQuery(tanksOptions(id)),
    cultures: useQuery(culturesOptions(id)),
    pairs: useQuery(pairsOptions(id)),
    clutches: useQuery(clutchesOptions(id)),
    batches: useQuery(batchesOptions(id)),
    groups: useQuery(groupsOptions(id)),
  }
}

/** The same as plain lists; empty until they have come, which `isComplete` says. */
export function useThings() {
  const { tanks, cultures, pairs, clutches, batches, groups } = useThingQueries()
  const isComplete = [tanks, cultures, pairs, clutches, batches, groups].every(({ isPending }) => !isPending)
  return {
    isComplete,
    tanks: tanks.data ?? [],
    cultures: cultures.data ?? [],
    pairs: pairs.data ?? [],
    clutches: clutches.data ?? [],
    batches: batches.data ?? [],
    groups: groups.data ?? [],
  }
}

const toThing =
  (kind: SubjectKind) =>
  ({ id, name, care }: Omit<Thing, 'kind'>): Thing => ({ id, kind, name, care })

/** Finds a thing by its id, whatever it is. */
export function useFindThing(): (id: Id | null | undefined) => Thing | undefined {
  const things = useThings()
  const all = [
    ...things.tanks.map(toThing('tank')),
    ...things.cultures.map(toThing('culture')),
    ...things.pairs.map(toThing('pair')),
    ...things.clutches.map(toThing('clutch')),
    ...things.batches.map(toThing('larval_batch')),
    ...things.groups.map(toThing('juvenile_group')),
  ]
  return (id) => all.find((thing) => thing.id === id)
}
