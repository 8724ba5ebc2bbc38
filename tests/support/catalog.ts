import { withClient } from './database-admin.ts'

/** What a database's `public` schema is made of, as sorted lines that two databases can be compared by. */
export type Catalog = { columns: string[]; enums: string[]; indexes: string[]; constraints: string[]; extras: string[] }

const LEDGER = '_prisma_migrations'

// Primary, unique and foreign keys are what a Prisma schema can say; checks, triggers, functions and indexes of some rows are plain SQL extras.
const QUERIES = {
  columns: `SELECT format('%s.%s %s%s default %s', c.relname, a.attname, format_type(a.atttypid, a.atttypmod),
      CASE WHEN a.attnotnull THEN ' not null' ELSE '' END, coalesce(pg_get_expr(d.adbin, d.adrelid), 'none')) AS line
    FROM pg_attribute a JOIN pg_class c ON c.oid = a.attrelid
    LEFT JOIN pg_attrdef d ON d.adrelid = a.attrelid AND d.adnum = a.attnum
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p') AND a.attnum > 0 AND NOT a.attisdropped
      AND c.relname <> '${LEDGER}' ORDER BY 1`,
  enums: `SELECT t.typname || ': ' || string_agg(e.enumlabel, ', ' ORDER BY e.enumsortorder) AS line
    FROM pg_type t JOIN pg_enum e ON e.enumtypid = t.oid
    WHERE t.typnamespace = 'public'::regnamespace GROUP BY t.typname ORDER BY 1`,
  indexes: `SELECT indexdef AS line FROM pg_indexes
    WHERE schemaname = 'public' AND tablename <> '${LEDGER}' AND indexdef NOT LIKE '% WHERE %' ORDER BY 1`,
  constraints: `SELECT conrelid::regclass || ' ' || conname || ' ' || pg_get_constraintdef(oid) AS line FROM pg_constraint
    WHERE connamespace = 'public'::regnamespace AND contype IN ('p', 'u', 'f')
      AND conrelid <> coalesce(to_regclass('${LEDGER}')::oid, 0) ORDER BY 1`,
  extras: `SELECT conrelid::regclass || ' check ' || conname AS line FROM pg_constraint
      WHERE connamespace = 'public'::regnamespace AND contype = 'c'
    UNION ALL SELECT tgrelid::regclass || ' trigger ' || tgname FROM pg_trigger WHERE NOT tgisinternal
    UNION ALL SELECT tablename || ' index of some rows ' || indexname FROM pg_indexes
      WHERE schemaname = 'public' AND indexdef LIKE '% WHERE %'
    UNION ALL SELECT 'function ' || proname FROM pg_proc WHERE pronamespace = 'public'::regnamespace ORDER BY 1`,
}

export async function readCatalog(connectionString: string): Promise<Catalog> {
  return withClient(connectionString, async (client) => {
    const read = async (query: string): Promise<string[]> => {
      const answer = await client.query<{ line: string }>(query)
      return answer.rows.map((row) => row.line)
    }
    return {
      columns: await read(QUERIES.columns),
      enums: await read(QUERIES.enums),
      indexes: await read(QUERIES.indexes),
      constraints: await read(QUERIES.constraints),
      extras: await read(QUERIES.extras),
    }
  })
}
