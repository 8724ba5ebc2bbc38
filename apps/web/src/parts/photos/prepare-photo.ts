import { maximumPhotoBytes, photoTypes } from '@fryward/shared'
import { ApiProblem } from '@/base/api/problem.ts'

/** Longest side of a picture that had to be drawn anew, px: more than the server keeps. */
const mostPixels = 3200
const jpegQuality = 0.9

const isTaken = (type: string) => photoTypes.some((one) => one === type)

/**
 * The file as it is when the server takes it; else (HEIC, or too many bytes) drawn anew as a JPEG.
 * @throws ApiProblem when this device cannot read the picture.
 */
export async function preparePhoto(file: Blob): Promise<Blob> {
  if (isTaken(file.type) && file.size <= maximumPhotoBytes) return file
  const picture = await createImageBitmap(file).catch((cause: unknown) => {
    throw cannotRead(file, cause)
  })
  const scale = Math.min(1, mostPixels / Math.max(picture.width, picture.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(picture.width * scale))
  canvas.height = Math.max(1, Math.round(picture.height * scale))
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height)
  picture.close()
  const drawn = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', jpegQuality))
  if (drawn === null) throw cannotRead(file)
  return drawn
}

const cannotRead = (file: Blob, cause?: unknown) =>
  new ApiProblem({
    code: 'unsupported_media_type',
    detail: `This device cannot read ${file instanceof File && file.name !== '' ? file.name : 'this file'} as a picture. Take it again, or choose a JPEG, PNG or WebP.`,
    status: 0,
    cause,
  })
