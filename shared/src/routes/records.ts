import * as z from 'zod/mini'
import { IdSchema } from '../primitives.ts'
import {
  CountsFileSchema,
  ImportedSchema,
  ImportPreviewSchema,
  RecordFileQuerySchema,
  recordFiles,
} from '../records.ts'
import { EmptySchema, inRoom, routesTagged } from './route.ts'

const { write, download } = routesTagged('records')

/** A room's records as files for a spreadsheet, and a notebook's counts from one. */
export const recordRoutes = {
  downloadRecords: download('/rooms/:roomId/exports/:what', {
    summary: 'Counts, feedings, losses, clutches or tasks between two dates, for a spreadsheet',
    permission: 'own',
    params: { ...inRoom, what: z.enum(recordFiles) },
    query: RecordFileQuerySchema,
    gives: 'text/csv',
  }),
  previewImport: write('POST', '/rooms/:roomId/imports/counts/preview', {
    summary: 'What would become of each line of a file of counts; nothing is kept',
    permission: 'manage',
    params: inRoom,
    body: CountsFileSchema,
    response: ImportPreviewSchema,
    status: 200,
  }),
  importCounts: write('POST', '/rooms/:roomId/imports/counts', {
    summary: 'Keep the good lines of a file of counts',
    permission: 'manage',
    params: inRoom,
    body: CountsFileSchema,
    response: ImportedSchema,
  }),
  undoImport: write('POST', '/rooms/:roomId/imports/:importId/undo', {
    summary: 'Strike out all that an import kept, within a day',
    permission: 'manage',
    params: { ...inRoom, importId: IdSchema },
    body: EmptySchema,
    response: z.object({ struck: z.int() }),
    status: 200,
  }),
}
