import { crc32, deflateSync } from 'node:zlib'

export const hiddenPlace = 'taken at 38.7223 N 9.1393 W'

/** A PNG of one colour, with a text and a metadata block in it that say where it was taken. */
export function picture({ width = 800, height = 600, shade = 120 } = {}): Buffer {
  const row = Buffer.concat([Buffer.from([0]), Buffer.alloc(width * 3, shade)])
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header.set([8, 2, 0, 0, 0], 8)
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('tEXt', Buffer.from(`Comment\0${hiddenPlace}`, 'latin1')),
    chunk('iTXt', Buffer.from(`XML:com.adobe.xmp\0\0\0\0\0<x>${hiddenPlace}</x>`, 'latin1')),
    chunk('IDAT', deflateSync(Buffer.concat(Array<Buffer>(height).fill(row)))),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data])
  const ends = Buffer.alloc(8)
  ends.writeUInt32BE(data.length, 0)
  ends.writeUInt32BE(crc32(body), 4)
  return Buffer.concat([ends.subarray(0, 4), body, ends.subarray(4)])
}
