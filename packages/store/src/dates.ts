/** A `date` column comes and goes as a Date at UTC midnight; the rest of the house speaks of plain dates. */
export const toDateColumn = (date: string): Date => new Date(`${date}T00:00:00.000Z`)
export const fromDateColumn = (date: Date): string => date.toISOString().slice(0, 10)
