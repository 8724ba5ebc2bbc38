/** Sign-offs and skips can be undone for a quarter of an hour. */
export const undoMinutes = 15
