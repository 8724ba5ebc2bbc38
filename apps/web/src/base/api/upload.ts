import { type CommandOf, type Photo, personHeader } from '@fryward/shared'
import { noAnswer, readProblem } from './problem.ts'

/**
 * Sends one photo as its raw bytes; its type travels as the content type. Not `fetch`, which cannot say how far it is.
 * @param address of the route.
 * @param onProgress told the share of the bytes that are on their way, 0 to 1.
 * @throws ApiProblem with the API's own code and sentence.
 */
export function uploadPhoto(
  address: string,
  command: CommandOf<'addPhoto'>,
  onProgress: (share: number) => void,
): Promise<Photo> {
  const { image, caption, ...ids } = command.body
  const search = new URLSearchParams(Object.entries(ids).filter(([, value]) => value !== undefined) as string[][])
  if (caption) search.set('caption', caption)
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest()
    request.open('POST', `${address}?${search.toString()}`)
    request.setRequestHeader('content-type', image.type)
    request.setRequestHeader('accept', 'application/json')
    request.setRequestHeader('idempotency-key', command.id)
    request.setRequestHeader(personHeader, command.personId)
    request.upload.onprogress = (event) => event.lengthComputable && onProgress(event.loaded / event.total)
    request.onerror = () => reject(noAnswer())
    request.onload = () => {
      const isOk = request.status >= 200 && request.status < 300
      const body = toJson(request.responseText)
      if (!isOk) return reject(readProblem(body, request.status, request.getResponseHeader('retry-after')))
      return body === undefined ? reject(noAnswer()) : resolve(body as Photo)
    }
    request.send(image)
  })
}

function toJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    // A proxy's page, say: whoever asked sees that it is none of ours.
    return undefined
  }
}
