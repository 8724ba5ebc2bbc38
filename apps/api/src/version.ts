import { createRequire } from 'node:module'
import { z } from 'zod'

/** The version that package.json carries. */
export const version: string = z
  .object({ version: z.string() })
  .parse(createRequire(import.meta.url)('../package.json')).version
