/**
 * One column of a snapshot: the SQL that reads it, and the type that its JSON has. A kind's row type and its part of the
 * statement are both made from one table of these, so that neither can name a column that the other does not.
 */
export type Column<T> = { sql: string; reads?: (value: never) => T }
export type Columns = Record<string, Column<unknown>>
export type RowOf<C extends Columns> = { [Name in keyof C]: C[Name] extends Column<infer T> ? T : never }

export const column = <T>(sql: string): Column<T> => ({ sql })
export const text = (sql: string) => column<string>(sql)
export const number = (sql: string) => column<number>(sql)
export const yesNo = (sql: string) => column<boolean>(sql)
/** A `date` as YYYY-MM-DD. */
export const date = (sql: string) => column<string>(sql)
/** ISO 8601 in UTC with milliseconds, as everywhere. */
export const instant = (sql: string) =>
  column<string>(`to_char(${sql} AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`)

const objectOf = (columns: Columns): string =>
  `json_build_object(${Object.entries(columns)
    .map(([name, { sql }]) => `'${name}', ${sql}`)
    .join(', ')})`

/** The things of one kind: their columns, and where they stand; `from` may name `alive`, the subjects that have not ended. */
export type Kind<C extends Columns = Columns> = { columns: C; from: string; orderBy: string }

export const kind = <const C extends Columns>(columns: C, from: string, orderBy = 'id'): Kind<C> => ({
  columns,
  from,
  orderBy,
})

export const listOf = ({ columns, from, orderBy }: Kind): string =>
  `(SELECT coalesce(json_agg(${objectOf(columns)} ORDER BY ${orderBy}), '[]') FROM ${from})`

export const oneOf = ({ columns }: Pick<Kind, 'columns'>): string => objectOf(columns)
