import { applyMigrations } from '@fryward/store'
import type { TestProject } from 'vitest/node'
import { createDatabase, databaseUrl, TEMPLATE_DATABASE } from './database-admin.ts'
import { startDatabaseServer } from './database-server.ts'

declare module 'vitest' {
  interface ProvidedContext {
    /** Superuser connection to the test server's own database; test files clone the template through it. */
    databaseServerUrl: string
  }
}

/** Starts PostgreSQL once for the whole run and migrates the template that each test file clones. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const startedAt = Date.now()
  const server = await startDatabaseServer()
  await createDatabase(server.connectionString, { name: TEMPLATE_DATABASE })
  await applyMigrations({ connectionString: databaseUrl(server.connectionString, TEMPLATE_DATABASE) })
  console.log(`Database of the ${project.name} tests: ${server.kind} PostgreSQL 18 (${Date.now() - startedAt} ms)`)
  project.provide('databaseServerUrl', server.connectionString)
  return server.stop
}
