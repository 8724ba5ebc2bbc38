import { PrismaPg } from '@prisma/adapter-pg'
import pg from 'pg'
import { type Prisma, PrismaClient } from './generated/client.ts'
import { preparedName } from './prepared.ts'

/**
 * One PostgreSQL: Prisma for rows, the same pool for the few statements that Prisma cannot say, and connections apart for
 * writes. Those may wait for a room's lock; reads and signing in never stand behind them.
 */
export type Database = {
  prisma: PrismaClient
  /** For `inTransaction` alone. */
  writing: PrismaClient
  pool: pg.Pool
  connectionString: string
  close: () => Promise<void>
}

/** What a use case works in; every query of one use case goes through the same one. */
export type Transaction = Prisma.TransactionClient

export function openDatabase({
  connectionString,
  maxConnections = 10,
}: {
  connectionString: string
  /** For reads, and as many again for writes. */
  maxConnections?: number
}): Database {
  const pool = openPool({ connectionString, maxConnections })
  const writers = openPool({ connectionString, maxConnections })
  const prisma = new PrismaClient({ adapter: new PrismaPg(pool, { statementNameGenerator }) })
  const writing = new PrismaClient({ adapter: new PrismaPg(writers, { statementNameGenerator }) })
  return {
    ...{ prisma, writing, pool, connectionString },
    close: async () => {
      for (const client of [prisma, writing]) await client.$disconnect()
      for (const each of [pool, writers]) if (!each.ended) await each.end()
    },
  }
}

// Nameless to pg is undefined; the adapter's type knows names only.
const statementNameGenerator = ({ sql }: { sql: string }): string => preparedName(sql) as string

function openPool({ connectionString, maxConnections }: { connectionString: string; maxConnections: number }): pg.Pool {
  const pool = new pg.Pool({ connectionString, max: maxConnections })
  // An idle connection that the server drops is replaced at the next query; without a listener it would end the process.
  pool.on('error', () => undefined)
  // One in use tells the work that uses it, by the query under way or the next; the pool listens to idle ones alone.
  pool.on('connect', (client) => client.on('error', () => undefined))
  return pool
}

/** Runs `work` on one snapshot of the database: what it reads fits together, whatever commits meanwhile. */
export function inSnapshot<T>(database: Database, work: (tx: Transaction) => Promise<T>): Promise<T> {
  return database.prisma.$transaction(work, { maxWait: 10_000, timeout: 20_000, isolationLevel: 'RepeatableRead' })
}

/** Runs `work` in one transaction; waiting for a room's lock counts against `maxWaitMs`. */
export function inTransaction<T>(database: Database, work: (tx: Transaction) => Promise<T>): Promise<T> {
  return database.writing.$transaction(work, { maxWait: 10_000, timeout: 20_000 })
}
