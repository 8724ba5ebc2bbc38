import type { Readable } from 'node:stream'

/** An answer of bytes, and what is said of them beside their type. */
export type Download = { bytes: Readable; headers: Record<string, string | number> }
