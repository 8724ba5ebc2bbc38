import { IdSchema } from '@fryward/shared'
import { expect, test } from 'vitest'
import { newId } from './new-id.ts'

test('an id carries its millisecond as RFC 9562 shows it, and the marks of version and variant', () => {
  // RFC 9562, appendix A.6: 2022-02-22 14:22:22 -05:00 is 0x017F22E279B0 ms, the UUID 017F22E2-79B0-7…
  expect(newId(0x017f22e279b0)).toMatch(/^017f22e2-79b0-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/)
  expect(IdSchema.safeParse(newId()).success).toBe(true)
})

test('ids sort by the time they were made, and two of one millisecond differ', () => {
  expect(newId(1_000) < newId(1_001)).toBe(true)
  expect(newId(1_000)).not.toBe(newId(1_000))
})
