import pg from 'pg'

/**
 * One connection of its own, which the caller ends. That the server dropped it is told by the query under way or the next
 * one; without a listener it would end the process.
 */
export async function openClient(connectionString: string): Promise<pg.Client> {
  const client = new pg.Client({ connectionString })
  client.on('error', () => undefined)
  await client.connect()
  return client
}
