/** SQL script from `from` to `to`, each the text of a Prisma schema (or null for an empty database). */
export function schemaDiff(schemas: { from: string | null; to: string }): Promise<string>
