import { z } from 'zod'

const FileSchema = z.object({ bytes: z.number().int(), sha256: z.string().length(64) })

// A manifest is a file that somebody may have altered: what it names becomes paths and statements.
const tableName = /^[a-z][a-z_]*$/
const photoPath = /^([0-9a-f]{2})\/\1[0-9a-f]{62}\.(full|thumbnail)\.jpg$/

/** What a backup says of itself: enough to check every byte and to know which schema its rows fit. */
export const ManifestSchema = z.object({
  format: z.literal('fryward-backup'),
  formatVersion: z.literal(1),
  createdAt: z.iso.datetime(),
  migrations: z.array(z.object({ name: z.string(), checksum: z.string() })).min(1),
  /** In an order in which no row comes before one that it points at. */
  tables: z.array(
    FileSchema.extend({ name: z.string().regex(tableName), columns: z.array(z.string()), rows: z.number().int() }),
  ),
  photos: z.array(FileSchema.extend({ path: z.string().regex(photoPath) })),
})
export type Manifest = z.infer<typeof ManifestSchema>

export const manifestName = 'manifest.json'
export const tableFile = (table: string): string => `tables/${table}.copy`
export const photoFile = (path: string): string => `photos/${path}`
