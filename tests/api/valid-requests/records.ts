import { inRoom, type Requests, type Writing } from './writing.ts'

const file = ({ serial, full }: Writing) =>
  `date,time,thing,samples,volume_ml\n2026-03-${String((serial % 9) + 1).padStart(2, '0')},06:${String(serial % 60).padStart(2, '0')},${full.culture.name},60 66,1\n`

export const recordRequests = {
  downloadRecords: (writing) => ({
    params: inRoom(writing, { what: 'counts' }),
    query: { from: '2026-03-01', to: '2026-03-31' },
  }),
  previewImport: (writing) => ({ params: inRoom(writing), body: { text: file(writing) } }),
  importCounts: (writing) => ({ params: inRoom(writing), body: { text: file(writing) } }),
  undoImport: async (writing) => {
    const { world, full } = writing
    const made = await world.ok(full.owner, 'importCounts', { params: inRoom(writing), body: { text: file(writing) } })
    return { params: inRoom(writing, { importId: made.id }), body: {} }
  },
} satisfies Requests
