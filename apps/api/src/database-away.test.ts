import { expect, test } from 'vitest'
import { isDatabaseAway, isDiskFull } from './database-away.ts'

test.each([
  'Connection terminated unexpectedly',
  'Connection terminated due to connection timeout',
  'Client has encountered a connection error and is not queryable',
  'Client was closed and is not queryable',
  'timeout exceeded when trying to connect',
  'Cannot use a pool after calling end on the pool',
])('"%s" is said of a database that is away', (message) => {
  expect(isDatabaseAway(new Error(message))).toBe(true)
  expect(isDatabaseAway(new Error('the sign-in failed', { cause: new Error(message) }))).toBe(true)
})

test.each(['57P01', '57P03', '08006', '53300', 'ECONNREFUSED', 'ERR_STREAM_DESTROYED', 'P2028'])(
  'the code %s is too',
  (code) => {
    expect(isDatabaseAway(Object.assign(new Error('x'), { code }))).toBe(true)
    expect(isDatabaseAway({ meta: { driverAdapterError: { cause: { originalCode: code } } } })).toBe(true)
  },
)

// As adapter-pg 7 throws it in the middle of a transaction, before Prisma has given it a code.
test.each(['ConnectionClosed', 'DatabaseNotReachable', 'SocketTimeout'])(
  'a driver that says %s says so too',
  (kind) => {
    expect(isDatabaseAway(new Error(kind, { cause: { kind } }))).toBe(true)
    expect(isDatabaseAway(new Error('x', { cause: { kind: 'UniqueConstraintViolation' } }))).toBe(false)
  },
)

test('a mistake of ours is none of these', () => {
  for (const error of [new TypeError('x is not a function'), { code: '23505' }, { code: 'P2002' }, null, 'text'])
    expect(isDatabaseAway(error)).toBe(false)
})

test.each(['53100', 'ENOSPC'])('the code %s says that the disk is full, wherever it stands', (code) => {
  expect(isDiskFull(Object.assign(new Error('x'), { code }))).toBe(true)
  expect(isDiskFull({ meta: { driverAdapterError: { cause: { originalCode: code } } } })).toBe(true)
  expect(isDiskFull({ code: '53300' })).toBe(false)
})
