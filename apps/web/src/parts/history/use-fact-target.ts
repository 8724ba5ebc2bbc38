'use client'

import type { ResponseOf } from '@fryward/shared'
import { useEffect } from 'react'
import { useHashTarget } from '@/base/ui/use-hash-target.ts'

/** How far back a "why" may point before it is looked up page by page no more. */
const mostPages = 8

type Pages = {
  data: { pages: ResponseOf<'listFacts'>[] } | undefined
  hasNextPage: boolean
  isFetchingNextPage: boolean
  fetchNextPage: () => unknown
}

/** The fact that the address points at ("why" links to one): older pages are fetched until it is there. */
export function useFactTarget({ data, hasNextPage, isFetchingNextPage, fetchNextPage }: Pages): string {
  const isHere = (id: string) =>
    data?.pages.some((page) => page.facts.some((fact) => `fact-${fact.id}` === id)) ?? false
  const id = useHashTarget(isHere)
  const isMissing = id.startsWith('fact-') && data !== undefined && !isHere(id)
  const mayLookOn = isMissing && hasNextPage && !isFetchingNextPage && data.pages.length < mostPages
  useEffect(() => {
    if (mayLookOn) void fetchNextPage()
  }, [mayLookOn, fetchNextPage])
  return id
}
