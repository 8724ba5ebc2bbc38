import { queryOptions } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'

export const speciesOptions = () =>
  queryOptions({
    queryKey: ['species'],
    queryFn: ({ signal }) => call('listSpecies', { signal }),
    staleTime: Number.POSITIVE_INFINITY,
  })
