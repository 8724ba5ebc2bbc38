import * as z from 'zod/mini'
import { UserIdSchema } from '../person.ts'
import type { Photo } from '../photo.ts'
import { type Id, IdSchema, InstantSchema } from '../primitives.ts'
import { type BodyInputOf, type ParamsOf, type ResponseOf, routes } from '../routes.ts'
import { addPhotoShape, commandRouteIds } from './command-routes.ts'

type CommandRouteId = (typeof commandRouteIds)[number]
export type CommandId = CommandRouteId | 'addPhoto'

/** What a command asks for: the path's parameters and the body of its route. */
export type CommandParams<K extends CommandId> = K extends CommandRouteId
  ? ParamsOf<K>
  : z.infer<typeof addPhotoShape.params>
export type CommandBody<K extends CommandId> = K extends CommandRouteId
  ? BodyInputOf<K>
  : z.input<typeof addPhotoShape.body>
export type CommandAnswer<K extends CommandId> = K extends CommandRouteId ? ResponseOf<K> : Photo

/**
 * One intention of one person, from the moment it began (a form opened, a button pressed). Its id is the
 * Idempotency-Key on every try, so that however often it is sent it is booked once.
 */
export type CommandOf<K extends CommandId> = {
  id: Id
  personId: string
  madeAt: string
  route: K
  params: CommandParams<K>
  body: CommandBody<K>
}
export type Command = { [K in CommandId]: CommandOf<K> }[CommandId]

const about = { id: IdSchema, personId: UserIdSchema, madeAt: InstantSchema }

const commandTo = <K extends CommandId>(route: K, shape: { params: z.ZodMiniType; body: z.ZodMiniType }) =>
  z.strictObject({ ...about, route: z.literal(route), params: shape.params, body: shape.body })

/** Every command there is, as a device keeps it. A door of its own leads here, so that no page loads all of it. */
export const CommandSchema = z.discriminatedUnion('route', [
  commandTo('addPhoto', addPhotoShape),
  ...commandRouteIds.map((route) => commandTo(route, routes[route])),
])
