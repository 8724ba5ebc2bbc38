// The SQL that turns one Prisma schema into another, from the schema engine's WebAssembly build (nothing is downloaded).
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { bindMigrationAwareSqlAdapterFactory, ColumnTypeEnum } from '@prisma/driver-adapter-utils'
import * as bindings from '@prisma/schema-engine-wasm/schema_engine_bg'

const emptySchema = 'datasource db {\n  provider = "postgresql"\n}\n'
let isReady = false

const refuse = async () => {
  throw new Error('Two schema texts are compared; no database is asked.')
}
// The engine wants a connection even where it compares two texts, and asks it one thing: whether the schema exists and
// which server this is. Answering here keeps `npm run migration` free of a running database.
const serverFacts = {
  columnNames: ['exists', 'version', 'numeric_version'],
  columnTypes: [ColumnTypeEnum.Boolean, ColumnTypeEnum.Text, ColumnTypeEnum.Int32],
  rows: [[true, 'PostgreSQL 18.0', 180_000]],
}
const unconnected = {
  provider: 'postgres',
  adapterName: 'unconnected',
  queryRaw: async (query) => (query.sql.includes('server_version_num') ? serverFacts : refuse()),
  executeRaw: refuse,
  executeScript: refuse,
  startTransaction: refuse,
  getConnectionInfo: () => ({ schemaName: 'public', supportsRelationJoins: true }),
  dispose: async () => {},
}
const unconnectedFactory = {
  ...unconnected,
  connect: async () => unconnected,
  connectToShadowDb: async () => unconnected,
}

async function loadEngine() {
  if (isReady) return
  const folder = dirname(createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm'))
  const { instance } = await WebAssembly.instantiate(readFileSync(join(folder, 'schema_engine_bg.wasm')), {
    './schema_engine_bg.js': bindings,
  })
  bindings.__wbg_set_wasm(instance.exports)
  instance.exports.__wbindgen_start()
  isReady = true
}

/** SQL script from `from` to `to`, each the text of a Prisma schema (or null for an empty database). */
export async function schemaDiff({ from, to }) {
  await loadEngine()
  const files = (content) => [{ path: 'schema.prisma', content: content ?? emptySchema }]
  const adapter = bindMigrationAwareSqlAdapterFactory(unconnectedFactory)
  const engine = await bindings.SchemaEngine.new(
    { datamodels: files(to).map((f) => [f.path, f.content]) },
    () => {},
    adapter,
  )
  const result = await engine.diff({
    from: { tag: 'schemaDatamodel', files: files(from) },
    to: { tag: 'schemaDatamodel', files: files(to) },
    script: true,
    exitCode: null,
    shadowDatabaseUrl: null,
    filters: { externalTables: [], externalEnums: [] },
  })
  return result.stdout ?? ''
}
