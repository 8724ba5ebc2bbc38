// npm run migration NAME: writes prisma/migrations/<time>_<name>/migration.sql from the edited schema, against the schema
// as it was last committed. Read the SQL and edit it before you commit: renames come out as drop and add.
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { schemaDiff } from './schema-diff.mjs'

const here = dirname(fileURLToPath(import.meta.url))
const name = process.argv[2]
if (!/^[a-z][a-z0-9_]{2,60}$/.test(name ?? '')) {
  console.error('Name the migration in lower case, such as: npm run migration add_photos')
  process.exit(1)
}
const hasMigrations = readdirSync(join(here, 'migrations'), { withFileTypes: true }).some((entry) =>
  entry.isDirectory(),
)
const committed = hasMigrations
  ? execFileSync('git', ['show', 'HEAD:prisma/schema.prisma'], { cwd: here, encoding: 'utf8' })
  : null
const sql = await schemaDiff({ from: committed, to: readFileSync(join(here, 'schema.prisma'), 'utf8') })
if (/^\s*(-- This is an empty migration\.)?\s*$/.test(sql)) {
  console.log('The schema is the same as the committed one; no migration is needed.')
  process.exit(0)
}
const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14)
const folder = join(here, 'migrations', `${stamp}_${name}`)
if (existsSync(folder)) throw new Error(`${folder} exists already; wait a second and run it again.`)
mkdirSync(folder, { recursive: true })
writeFileSync(join(folder, 'migration.sql'), sql)
console.log(`Wrote prisma/migrations/${stamp}_${name}/migration.sql. Read it before you commit it.`)
