import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { routes } from '@fryward/shared'
import { expect, test } from 'vitest'
import { root } from '../support/project-root.ts'

/** What the files of `routes/` add to the table, each as id and route. */
async function routesOfFiles(): Promise<[string, object][]> {
  const folder = join(root, 'shared/src/routes')
  const files = readdirSync(folder).filter((file) => file !== 'route.ts')
  const parts = await Promise.all(files.map((file) => import(join(folder, file)) as Promise<Record<string, object>>))
  return parts.flatMap((part) => Object.values(part).flatMap((table) => Object.entries(table)))
}

test('the table holds every route of every resource, and no resource takes a name from another', async () => {
  const all = await routesOfFiles()
  expect(all.length).toBeGreaterThan(60)
  expect(Object.entries(routes)).toHaveLength(all.length)
  for (const [id, route] of all) expect(routes).toHaveProperty(id, route)
})

test('no two routes answer the same request', () => {
  const requests = Object.values(routes).map(({ method, path }) => `${method} ${path.replace(/:\w+/g, ':')}`)
  expect(new Set(requests).size).toBe(requests.length)
})
