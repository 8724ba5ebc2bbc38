/** A word of the contract or a name of a time zone, without its underscores: "two_pairs" is two pairs. */
export const sayCode = (code: string): string => code.replaceAll('_', ' ')
