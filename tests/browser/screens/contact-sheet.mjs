import { existsSync } from 'node:fs'
import sharp from 'sharp'

const gap = 16
const captionHeight = 36
const shotHeight = 450
const paper = '#8a8a86'

const escaped = (text) => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')

/** All pictures of one state in a row, the states one under the other, each with its caption. */
export async function makeContactSheet({ rows, sizes, file }) {
  const widths = sizes.map(({ width, height }) => Math.round((shotHeight * width) / height))
  const width = widths.reduce((sum, each) => sum + each + gap, gap)
  const rowHeight = captionHeight + shotHeight + gap
  const layers = []
  for (const [index, row] of rows.entries()) {
    const top = index * rowHeight + gap
    const text = `<svg width="${width}" height="${captionHeight}"><text x="${gap}" y="26" font-family="sans-serif" font-size="24" fill="#fff">${escaped(row.name)}</text></svg>`
    layers.push({ input: Buffer.from(text), left: 0, top })
    let left = gap
    for (const [column, path] of row.files.entries()) {
      if (!existsSync(path)) {
        left += widths[column] + gap
        continue
      }
      const input = await sharp(path).resize(widths[column], shotHeight, { fit: 'cover', position: 'top' }).toBuffer()
      layers.push({ input, left, top: top + captionHeight })
      left += widths[column] + gap
    }
  }
  const height = rows.length * rowHeight + gap
  await sharp({ create: { width, height, channels: 3, background: paper }, limitInputPixels: false })
    .composite(layers)
    .jpeg({ quality: 80 })
    .toFile(file)
}

/** A phone and a desk side by side, for the README: small enough to load with it. */
export async function makeReadmePicture({ phone, desktop, file }) {
  const height = 760
  const [left, right] = await Promise.all(
    [phone, desktop].map((path) => sharp(path).resize({ height }).toBuffer({ resolveWithObject: true })),
  )
  const width = left.info.width + right.info.width + 3 * 24
  await sharp({ create: { width, height: height + 48, channels: 3, background: '#d9d2c3' } })
    .composite([
      { input: left.data, left: 24, top: 24 },
      { input: right.data, left: left.info.width + 48, top: 24 },
    ])
    .jpeg({ quality: 82, mozjpeg: true })
    .toFile(file)
}
