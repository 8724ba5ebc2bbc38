import type pg from 'pg'

export type Table = { name: string; columns: string[] }

export const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`

/** Every table of ours with its stored columns, parents before children (a table that points at itself is one COPY). */
export async function listTables(client: pg.ClientBase): Promise<Table[]> {
  const columns = await client.query<{ table: string; columns: string[] }>(`
    SELECT c.relname AS table, array_agg(a.attname::text ORDER BY a.attnum) AS columns
    FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace JOIN pg_attribute a ON a.attrelid = c.oid
    WHERE n.nspname = 'public' AND c.relkind IN ('r', 'p') AND NOT c.relispartition AND c.relname <> '_prisma_migrations'
      AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = ''
    GROUP BY c.relname ORDER BY c.relname`)
  const links = await client.query<{ child: string; parent: string }>(`
    SELECT child.relname AS child, parent.relname AS parent
    FROM pg_constraint k JOIN pg_class child ON child.oid = k.conrelid JOIN pg_class parent ON parent.oid = k.confrelid
    WHERE k.contype = 'f' AND k.conrelid <> k.confrelid`)
  const parentsOf = new Map<string, string[]>()
  for (const { child, parent } of links.rows) parentsOf.set(child, [...(parentsOf.get(child) ?? []), parent])
  const tables = new Map(columns.rows.map((row) => [row.table, { name: row.table, columns: row.columns }]))
  const ordered: Table[] = []
  const seen = new Set<string>()
  const visit = (name: string) => {
    if (seen.has(name)) return
    seen.add(name)
    parentsOf.get(name)?.forEach(visit)
    const table = tables.get(name)
    if (table) ordered.push(table)
  }
  for (const name of tables.keys()) visit(name)
  return ordered
}
