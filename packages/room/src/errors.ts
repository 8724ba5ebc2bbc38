import type { ErrorCode, FieldProblem } from '@fryward/shared'

/** The one error that use cases throw on purpose. `message` is a sentence that says what to do next. */
export class RoomError extends Error {
  override name = 'RoomError'
  readonly code: ErrorCode
  readonly fields: FieldProblem[] | undefined
  readonly current: unknown

  constructor(
    code: ErrorCode,
    message: string,
    more: { fields?: FieldProblem[]; current?: unknown; cause?: unknown } = {},
  ) {
    super(message, { cause: more.cause })
    this.code = code
    this.fields = more.fields
    this.current = more.current
  }
}

export const notFound = (what: string): RoomError =>
  new RoomError('not_found', `There is no such ${what} here, or you are not in its room.`)

/** A room that is not there, or not for whoever asks: neither learns which. */
export const noSuchRoom = (): RoomError =>
  new RoomError(
    'not_found',
    'You are not in this room, or it is not on this server. Ask its owner for an invitation link.',
  )

export const invalid = (path: string, message: string, received?: unknown): RoomError =>
  new RoomError('invalid_input', message, { fields: [{ path, message, received }] })
