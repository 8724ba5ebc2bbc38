import { addressOf, type Id, type QueryOf, type RecordFile } from '@fryward/shared'
import { useMutation } from '@tanstack/react-query'
import { call } from '@/base/api/call.ts'
import { useRefreshRoom } from '@/parts/rooms/queries.ts'

/** Address of a file of records; a plain link, so that the browser saves it. */
export const recordFileAddress = (roomId: Id, what: RecordFile, query: QueryOf<'downloadRecords'>): string =>
  `${addressOf('downloadRecords', { roomId, what })}?${new URLSearchParams(query).toString()}`

/** What would become of each line of a file; nothing is kept. */
export const usePreviewImport = (roomId: Id) =>
  useMutation({ mutationFn: (text: string) => call('previewImport', { params: { roomId }, body: { text } }) })

export function useImportCounts(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: (text: string) => call('importCounts', { params: { roomId }, body: { text } }),
    onSettled: () => void refresh(),
  })
}

export function useUndoImport(roomId: Id) {
  const refresh = useRefreshRoom(roomId)
  return useMutation({
    mutationFn: (importId: Id) => call('undoImport', { params: { roomId, importId }, body: {} }),
    onSettled: () => void refresh(),
  })
}
