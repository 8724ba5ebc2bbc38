/**
 * Node's flag against deprecation warnings: Prisma's adapter overlaps queries of one transaction, which pg 8 does well
 * and warns of, and nobody at the terminal can change it.
 */
export const quietly = '--disable-warning=DeprecationWarning'
