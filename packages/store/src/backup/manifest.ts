import { z } from 'zod'

const FileSchema = z.object({ bytes: z.number().int(), sha256: z.string().length(64) })

/** What a backup says of itself: enough to check every byte and to know which schema its rows fit. */
export const ManifestSchema = z.object({
  format: z.literal('fryward-backup'),
  formatVersion: z.literal(1),
  createdAt: z.iso.datetime(),
  migrations: z.array(z.object({ name: z.string(), checksum: z.string() })).min(1),
  /** In an order in which no row comes before one that it points at. */
  tables: z.array(FileSchema.extend({ name: z.string(), columns: z.array(z.string()), rows: z.number().int() })),
  photos: z.array(FileSchema.extend({ path: z.string() })),
})
export type Manifest = z.infer<typeof ManifestSchema>

export const manifestName = 'manifest.json'
export const tableFile = (table: string): string => `tables/${table}.copy`
export const photoFile = (path: string): string => `photos/${path}`
