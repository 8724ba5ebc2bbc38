import pg from 'pg'

const tables = [
  ...['room', 'user', 'membership', 'account', 'subject', 'tank', 'culture', 'concentrate', 'pair', 'clutch'],
  ...['larval_batch', 'batch_clutch', 'juvenile_group', 'feed_link', 'rule_change', 'day_list', 'task', 'task_change'],
  ...['sign_off', 'fact', 'audit_entry', 'note'],
]
// Made anew for each room, or a hash of what is.
const ownToRoom = ['fingerprint', 'password']

/**
 * A database's rooms as one line of JSON a row, in an order of its own. Ids read as their place in the order in which
 * their rows were made, so that two rooms which differ in ids alone give the same lines.
 */
export async function tellRooms(connectionString: string): Promise<string[]> {
  const client = new pg.Client({ connectionString })
  await client.connect()
  try {
    const places = new Map<string, string>()
    const rows: { table: string; row: Record<string, unknown> }[] = []
    for (const table of tables) {
      // Ids grow with time; tables that have none are put in order by what they say.
      const found = await client.query<{ row: Record<string, unknown> }>(
        `SELECT to_jsonb(t) AS row FROM "${table}" AS t ORDER BY to_jsonb(t)->>'id'`,
      )
      for (const [index, { row }] of found.rows.entries()) {
        if (typeof row.id === 'string' && !places.has(row.id)) places.set(row.id, `${table} ${index}`)
        rows.push({ table, row })
      }
    }
    const isOwn = (name: string) => ownToRoom.includes(name)
    const lines = rows.map(
      ({ table, row }) => `${table} ${JSON.stringify(row, (name, value) => (isOwn(name) ? undefined : value))}`,
    )
    return lines.map((line) => line.replace(uuids, (id) => places.get(id) ?? 'an unknown id')).sort()
  } finally {
    await client.end()
  }
}

const uuids = /[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g
