// Migrates the database that DATABASE_URL names, and ends: what the containers run before the API starts.
import { applyMigrations } from './apply-migrations.ts'

const connectionString = process.env.DATABASE_URL
try {
  if (!connectionString) throw new Error('DATABASE_URL is not set: say which database to migrate.')
  const { applied } = await applyMigrations({ connectionString, log: say })
  say(applied.length === 0 ? 'The database is up to date.' : `Applied ${applied.length} migrations.`)
} catch (thrown) {
  process.stderr.write(`${thrown instanceof Error ? thrown.message : String(thrown)}\n`)
  process.exitCode = 1
}

function say(sentence: string): void {
  process.stdout.write(`${sentence}\n`)
}
