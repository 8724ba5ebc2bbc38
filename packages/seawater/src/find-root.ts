/**
 * Root of a rising function between two ends (the end itself where it does not change sign), by bisection until the interval
 * no longer splits in double precision: slow (about 60 steps) and certain.
 */
export function findRisingRoot(f: (x: number) => number, { low, high }: { low: number; high: number }): number {
  if (f(low) >= 0) return low
  let below = low
  let above = high
  for (;;) {
    const middle = below + (above - below) / 2
    if (middle <= below || middle >= above) return -f(below) <= f(above) ? below : above
    if (f(middle) <= 0) below = middle
    else above = middle
  }
}
