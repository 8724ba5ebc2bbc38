const kindOf = (value: unknown) => (Array.isArray(value) ? 'array' : value === null ? 'null' : typeof value)

/**
 * Whether something kept earlier can stand in a form that begins with `start`: all its parts are there, each of its kind.
 * A part that begins as undefined may be anything.
 */
export const hasShapeOf = <T extends object>(start: T, kept: unknown): kept is T =>
  typeof kept === 'object' &&
  kept !== null &&
  Object.entries(start).every(([name, value]) => {
    const other: unknown = Reflect.get(kept, name)
    return value === undefined || kindOf(other) === kindOf(value)
  })
