import { firstRoutes, type Route } from '@fryward/shared'
import { noAnswer } from './problem.ts'

/** Fetches the routes that no page of a room needs at first. */
export const loadLaterRoutes = () => import('./later-routes.ts')

/**
 * A route of the contract by its id. Those that a page of a room asks for at first are there; the others come after it, in
 * a script of their own.
 * @throws ApiProblem `offline` where that script does not come.
 */
export async function findRoute(id: string): Promise<Route | undefined> {
  const first: Record<string, Route> = firstRoutes
  if (id in first) return first[id]
  const later: Record<string, Route> = await loadLaterRoutes().then(
    ({ laterRoutes }) => laterRoutes,
    (cause: unknown) => Promise.reject(noAnswer(cause)),
  )
  return later[id]
}
