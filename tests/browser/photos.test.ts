import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { soon } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { type LivedInRoom, openLivedInRoom } from '../support/stage-room.ts'

let stage: Stage
let room: LivedInRoom
let page: Page

/** A picture as a phone takes it: with the place in it. */
const pictureWithPlace = () =>
  sharp({ create: { width: 64, height: 48, channels: 3, background: '#3a7d44' } })
    .withExif({ IFD0: { Make: 'Phone' }, IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } })
    .jpeg()
    .toBuffer()

/** EXIF tag 0x8825 leads to where the picture was taken, in either byte order. */
const hasPlace = async (image: Buffer) => {
  const { exif } = await sharp(image).metadata()
  return exif !== undefined && ['8825', '2588'].some((tag) => exif.includes(Buffer.from(tag, 'hex')))
}

const storedFiles = () =>
  readdirSync(stage.photosFolder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.jpg'))
    .map((path) => readFileSync(join(stage.photosFolder, path)))

describe('a photo on a record', () => {
  beforeAll(async () => {
    stage = await openStage()
    room = await openLivedInRoom(stage)
    page = await stage.openPage(room.people.caretaker, { path: room.path(`cultures/${room.culture.id}`) })
  })
  afterAll(() => stage.close())

  it('is chosen, sent, and shows as a thumbnail on that record', async () => {
    const record = page.getByRole('listitem').filter({ hasText: '180 per mL' }).first()
    await record.waitFor(soon)
    await record.getByRole('button', { name: /^More: Count/ }).click()
    await record.getByRole('button', { name: /^Photo of/ }).click()
    const buffer = await pictureWithPlace()
    expect(await hasPlace(buffer)).toBe(true)
    await record.getByLabel(/^Add a photo/).setInputFiles({ name: 'r1.jpg', mimeType: 'image/jpeg', buffer })
    await record.getByLabel(/^A word to it/).fill('Under the lamp')
    await record.getByRole('button', { name: 'Send the photo' }).click()
    const thumbnail = record.getByRole('button', { name: 'Photo: Under the lamp' })
    await thumbnail.scrollIntoViewIfNeeded()
    const image = thumbnail.locator('img')
    await expect.poll(() => image.evaluate((img: HTMLImageElement) => img.naturalWidth), soon).toBe(64)
  })

  it('is stored in both sizes without the place it was taken at', async () => {
    const files = storedFiles()
    expect(files).toHaveLength(2)
    for (const file of files) expect(await hasPlace(file)).toBe(false)
  })

  it('opens in full, and stays away from strangers', async () => {
    await page.getByRole('button', { name: 'Photo: Under the lamp' }).first().click()
    const full = page.getByRole('dialog').locator('img')
    const address = await full.getAttribute('src')
    await expect.poll(() => full.evaluate((img: HTMLImageElement) => img.naturalWidth), soon).toBe(64)
    const stranger = await fetch(`${stage.origin}${address}`)
    expect([401, 404]).toContain(stranger.status)
  })
})
