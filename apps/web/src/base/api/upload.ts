import type { Id, Photo } from '@fryward/shared'
import { addressOf, PhotoSchema, ProblemSchema } from '@fryward/shared'
import { ApiProblem } from './problem.ts'
import { makeRequestKey } from './request-key.ts'

type Upload = {
  roomId: Id
  query: { subjectId: Id; factId?: Id | undefined; caption: string }
  image: Blob
  /** The same key for a repeat of the same photo. */
  requestKey?: string
  /** Share of the bytes that are on their way, 0 to 1. */
  onProgress: (share: number) => void
}

const offline = () =>
  new ApiProblem({
    code: 'offline',
    detail: 'The photo did not reach the server. It is still here: check the network, then send it again.',
    status: 0,
  })

const unreadable = (status: number) =>
  new ApiProblem({
    code: 'unreadable',
    detail: `The server answered ${status} without saying why. The photo is still here: send it again in a moment.`,
    status,
  })

/**
 * Sends one photo as its raw bytes; its type travels as the content type. Not `fetch`, which cannot say how far it is.
 * @throws ApiProblem with the API's own code and sentence.
 */
export function uploadPhoto({ roomId, query, image, requestKey, onProgress }: Upload): Promise<Photo> {
  const search = new URLSearchParams({ subjectId: query.subjectId })
  if (query.caption !== '') search.set('caption', query.caption)
  if (query.factId !== undefined) search.set('factId', query.factId)
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest()
    request.open('POST', `${addressOf('addPhoto', { roomId })}?${search.toString()}`)
    request.setRequestHeader('content-type', image.type)
    request.setRequestHeader('accept', 'application/json')
    request.setRequestHeader('idempotency-key', requestKey ?? makeRequestKey())
    request.upload.onprogress = (event) => event.lengthComputable && onProgress(event.loaded / event.total)
    request.onerror = () => reject(offline())
    request.onload = () => {
      const body = toJson(request.responseText)
      if (request.status >= 200 && request.status < 300) {
        const photo = PhotoSchema.safeParse(body)
        return photo.success ? resolve(photo.data) : reject(unreadable(request.status))
      }
      const problem = ProblemSchema.safeParse(body)
      return reject(problem.success ? new ApiProblem(problem.data) : unreadable(request.status))
    }
    request.send(image)
  })
}

function toJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    // A proxy's page, say: the schema refuses it next.
    return undefined
  }
}
