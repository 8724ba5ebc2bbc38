/** A reading of a known gauge, in the unit that is kept. `at`: milliseconds since 1970. */
export type KeptReading = { channel: number; at: number; value: number }
