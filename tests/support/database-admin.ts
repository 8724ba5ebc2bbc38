import pg from 'pg'

/** The same server's URL with another database in it. */
export function databaseUrl(serverUrl: string, name: string): string {
  const url = new URL(serverUrl)
  url.pathname = `/${name}`
  return url.href
}

/** The migrated database that test files clone. */
export const TEMPLATE_DATABASE = 'fryward_template'

export type NewDatabase = { name: string; template?: string }

export async function createDatabase(serverUrl: string, { name, template = 'template0' }: NewDatabase): Promise<void> {
  await withClient(serverUrl, (client) =>
    client.query(`CREATE DATABASE ${client.escapeIdentifier(name)} TEMPLATE ${client.escapeIdentifier(template)}`),
  )
}

/** Drops the database; throws, after dropping it all the same, when a connection to it was left open. */
export async function dropDatabase(serverUrl: string, name: string): Promise<void> {
  await withClient(serverUrl, async (client) => {
    const quoted = client.escapeIdentifier(name)
    try {
      await client.query(`DROP DATABASE ${quoted}`) // waits up to 5 s for closing connections
    } catch (cause) {
      await client.query(`DROP DATABASE IF EXISTS ${quoted} WITH (FORCE)`)
      throw new Error(`A test left connections to ${name} open: close its pools`, { cause })
    }
  })
}

export async function withClient<T>(url: string, use: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    return await use(client)
  } finally {
    await client.end()
  }
}
