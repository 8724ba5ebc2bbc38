import { promisify } from 'node:util'
import { gunzip } from 'node:zlib'
import { RoomError } from '@fryward/room'

const unzip = promisify(gunzip)
// A packed body may not grow beyond this: twenty thousand readings are a fifth of it.
const mostUnpacked = 16 * 1024 * 1024

/** A body of bytes, unpacked where it came gzipped. */
export async function bytesOf(body: Buffer | undefined, { isGzipped }: { isGzipped: boolean }): Promise<Buffer> {
  if (body === undefined || body.length === 0) throw new RoomError('invalid_input', 'The post is empty.')
  return isGzipped ? unpacked(body) : body
}

async function unpacked(body: Buffer): Promise<Buffer> {
  try {
    return await unzip(body, { maxOutputLength: mostUnpacked })
  } catch (error) {
    const isTooLarge = error instanceof RangeError
    throw isTooLarge
      ? new RoomError('too_large', 'Unpacked, this post is larger than 16 MB. Send it in parts.', { cause: error })
      : new RoomError('invalid_input', 'This body says that it is gzip, and is not.', { cause: error })
  }
}
