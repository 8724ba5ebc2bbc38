/** "B1", "B1 and B2", "B1, B2 and B3". */
export function together(names: readonly string[]): string {
  const last = names.at(-1) ?? ''
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`
}
