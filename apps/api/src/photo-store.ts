import { createHash, randomUUID } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { mkdir, rename, stat, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { RoomError } from '@fryward/room'
import { type photoSizes, photoTypes } from '@fryward/shared'
import sharp from 'sharp'
import type { Download } from './download.ts'

export type PhotoSize = (typeof photoSizes)[number]

// Sharp enough to count eggs on; small enough for a phone on a weak network. common practice
const fullPixels = 2400
const thumbnailPixels = 320
// A picture larger than any phone's is a trap for the memory.
const mostPixels = 100_000_000

/** Photos on disk, named by the hash of what was stored: the same picture twice is one file. */
export type PhotoStore = {
  store: (image: Buffer) => Promise<{ sha256: string; width: number; height: number; bytes: number }>
  /** @throws RoomError when the file is not there. */
  open: (photo: { sha256: string; size: PhotoSize }) => Promise<Download>
}

/** @throws RoomError on a server that was started without a folder for photos. */
export function keptBy(photos: PhotoStore | null): PhotoStore {
  if (!photos) throw new RoomError('unavailable', 'This server keeps no photos: it was started without DATA_DIR.')
  return photos
}

/** The picture that a request brought. */
export function pictureIn(body: Buffer | undefined): Buffer {
  if (!Buffer.isBuffer(body) || body.length === 0)
    throw new RoomError('unsupported_media_type', `Send the photo itself as ${photoTypes.join(', ')}.`)
  return body
}

export function openPhotoStore(folder: string): PhotoStore {
  const pathOf = ({ sha256, size }: { sha256: string; size: PhotoSize }) =>
    join(folder, sha256.slice(0, 2), `${sha256}.${size}.jpg`)
  return {
    open: (photo) => opened(pathOf(photo), `"${photo.sha256}.${photo.size}"`),
    store: async (image) => {
      if (!isPhoto(image)) throw noPhoto()
      const full = await resized(image, { pixels: fullPixels, quality: 85 })
      const thumbnail = await resized(image, { pixels: thumbnailPixels, quality: 75 })
      const sha256 = createHash('sha256').update(full.data).digest('hex')
      await writeWhole(pathOf({ sha256, size: 'full' }), full.data)
      await writeWhole(pathOf({ sha256, size: 'thumbnail' }), thumbnail.data)
      return { sha256, width: full.info.width, height: full.info.height, bytes: full.info.size }
    },
  }
}

/** By what it begins with, not by what it is called: the picture library would also draw SVG, which may name files. */
function isPhoto(image: Buffer): boolean {
  const begins = (bytes: string, at = 0) => image.subarray(at, at + bytes.length).equals(Buffer.from(bytes, 'latin1'))
  return begins('\xff\xd8\xff') || begins('\x89PNG\r\n\x1a\n') || (begins('RIFF') && begins('WEBP', 8))
}

const noPhoto = (cause?: unknown) =>
  new RoomError('invalid_input', 'This file is no picture that can be read. Send a JPEG, PNG or WebP photo.', { cause })

/** Turned upright by its EXIF flag; then all EXIF, the position with it, is left out (sharp's default). */
async function resized(image: Buffer, { pixels, quality }: { pixels: number; quality: number }) {
  try {
    return await sharp(image, { limitInputPixels: mostPixels, failOn: 'error' })
      .rotate()
      .resize(pixels, pixels, { fit: 'inside', withoutEnlargement: true })
      .jpeg({ quality, mozjpeg: true })
      .toBuffer({ resolveWithObject: true })
  } catch (cause) {
    throw noPhoto(cause)
  }
}

async function opened(path: string, tag: string): Promise<Download> {
  const file = await stat(path).catch(() => null)
  if (!file)
    throw new RoomError('not_found', 'The file of this photo is not in the data folder. Restore it from a backup.')
  return {
    bytes: createReadStream(path),
    headers: {
      // The room's people alone may see it, and only while it is on its record: asked about each time, sent once.
      'cache-control': 'private, no-cache',
      etag: tag,
      'content-length': file.size,
    },
  }
}

/** Written beside and moved into place, so that a crash leaves no half picture under a good name. */
async function writeWhole(path: string, data: Buffer): Promise<void> {
  await mkdir(dirname(path), { recursive: true })
  const beside = `${path}.${randomUUID()}`
  await writeFile(beside, data, { mode: 0o600 })
  await rename(beside, path)
}
