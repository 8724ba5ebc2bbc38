/**
 * A statement that a connection plans once: of the large ones under a room's lock, planning is most of their cost. Few
 * have names, since a connection forgets none.
 */
export const prepared = (name: string, statement: string): string => `/* prepared ${name} */ ${statement}`

export const preparedName = (statement: string): string | undefined =>
  /^\/\* prepared ([a-z_]+) \*\//.exec(statement)?.[1]
