import { addressOf, type Command, isRouteId } from '@fryward/shared'
import { call } from '@/base/api/call.ts'
import { ApiProblem } from '@/base/api/problem.ts'
import { uploadPhoto } from '@/base/api/upload.ts'

/**
 * One try. Whether its values are right the API says, in sentences of its own.
 * @throws ApiProblem
 */
export async function sendCommand(command: Command, onProgress: (share: number) => void): Promise<unknown> {
  if (!isRouteId(command.route))
    throw new ApiProblem({
      code: 'invalid_input',
      detail: 'This was kept before the dashboard changed and cannot be sent any more. Enter it again, then drop this.',
      status: 400,
    })
  if (command.route === 'addPhoto') return uploadPhoto(addressOf('addPhoto', command.params), command, onProgress)
  const { route, params, body, id, personId } = command
  // Parameters and body are those of the route: a command is made of all three.
  return call(route, { params, body, requestKey: id, personId } as Parameters<typeof call>[1])
}
