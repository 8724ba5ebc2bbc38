import { Readable } from 'node:stream'

/** An answer of bytes, and what is said of them beside their type. */
export type Download = { bytes: Readable; headers: Record<string, string | number> }

/** The same of a text that comes bit by bit. */
export const growingFile = ({ name, text }: { name: string; text: AsyncIterable<string> }): Download => ({
  bytes: Readable.from(text, { objectMode: false }),
  headers: { 'content-disposition': `attachment; filename="${name}"`, 'cache-control': 'no-store' },
})

/** A text that the browser saves under its name; of somebody's own, and of this moment. */
export const textFile = ({ name, text }: { name: string; text: string }): Download => ({
  bytes: Readable.from([Buffer.from(text)]),
  headers: { 'content-disposition': `attachment; filename="${name}"`, 'cache-control': 'no-store' },
})
