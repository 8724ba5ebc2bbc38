/** Of parts of a snapshot, which are plain data with their fields in one order. */
export const isEqual = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b)
