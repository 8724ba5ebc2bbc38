import { openClient } from '@fryward/store'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openWorld, type World } from '../support/world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

type Asks = Pick<Awaited<ReturnType<typeof openClient>>, 'query'>

/** What an administrator does who restarts PostgreSQL. Node ends a process in which nobody listens for the error. */
async function drop(client: Asks) {
  const { rows } = await client.query('SELECT pg_backend_pid() AS pid')
  await world.database.pool.query('SELECT pg_terminate_backend($1)', [rows[0]?.pid])
  const answer = () =>
    client.query('SELECT 1').then(
      () => 'answers',
      () => 'refuses',
    )
  await expect.poll(answer, { timeout: 20_000 }).toBe('refuses')
}

test('a connection of the pool that the server drops while it is in use fails its work, and not the process', async () => {
  const client = await world.database.pool.connect()
  expect(client.listenerCount('error')).toBeGreaterThan(0)
  await drop(client)
  client.release(true)
})

test('neither does one that stands by itself', async () => {
  const client = await openClient(world.database.connectionString)
  expect(client.listenerCount('error')).toBeGreaterThan(0)
  await drop(client)
  await client.end()
})

test('nor one in the middle of a transaction', async () => {
  const work = world.database.prisma.$transaction(async (tx) => {
    const [row] = await tx.$queryRaw<{ pid: number }[]>`SELECT pg_backend_pid() AS pid`
    await world.database.pool.query('SELECT pg_terminate_backend($1)', [row?.pid])
    for (;;) await tx.$queryRaw`SELECT 1`
  })
  await expect(work).rejects.toThrow()
})
