import { type OrderedPedigree, UNKNOWN } from './pedigree.ts'

/**
 * The factors of the relationship matrix A = T D T': row i of T holds the share of i's genes that each ancestor passed
 * on, D each animal's Mendelian sampling variance. Nothing n by n is kept.
 * Henderson 1976, Biometrics 32:69-83; Quaas 1976, Biometrics 32:949-953.
 */
export class GeneFlow {
  readonly inbreeding: Float64Array
  readonly mendelianVariance: Float64Array
  readonly #pedigree: OrderedPedigree
  // Work space, all 0 between calls: shares of one animal or of two at once.
  readonly #shares: Float64Array
  readonly #otherShares: Float64Array

  constructor(pedigree: OrderedPedigree) {
    const animals = pedigree.ids.length
    this.#pedigree = pedigree
    this.#shares = new Float64Array(animals)
    this.#otherShares = new Float64Array(animals)
    this.inbreeding = new Float64Array(animals)
    this.mendelianVariance = new Float64Array(animals)
    this.#fillInbreeding()
  }

  /**
   * Every animal's inbreeding, parents first, as half the relationship of its parents
   * (Meuwissen & Luo 1992, Genet. Sel. Evol. 24:305-313, once per pair and not per child).
   */
  #fillInbreeding(): void {
    const { sires, dams, ids } = this.#pedigree
    const byPair = new Map<number, number>()
    for (let animal = 0; animal < ids.length; animal += 1) {
      const sire = sires[animal] ?? UNKNOWN
      const dam = dams[animal] ?? UNKNOWN
      this.mendelianVariance[animal] = 1 - this.#fromParent(sire) - this.#fromParent(dam)
      if (sire === UNKNOWN || dam === UNKNOWN) continue
      const pair = Math.min(sire, dam) * ids.length + Math.max(sire, dam)
      const known = byPair.get(pair)
      const inbreeding = known ?? this.relationship(sire, dam) / 2
      if (known === undefined) byPair.set(pair, inbreeding)
      this.inbreeding[animal] = inbreeding
    }
  }

  /** The variance that a known parent explains: a quarter of 1 + its inbreeding. */
  #fromParent(parent: number): number {
    return parent === UNKNOWN ? 0 : (1 + (this.inbreeding[parent] ?? 0)) / 4
  }

  #passUp(shares: Float64Array, animal: number): void {
    const half = (shares[animal] ?? 0) / 2
    if (half === 0) return
    const sire = this.#pedigree.sires[animal] ?? UNKNOWN
    const dam = this.#pedigree.dams[animal] ?? UNKNOWN
    if (sire !== UNKNOWN) shares[sire] = (shares[sire] ?? 0) + half
    if (dam !== UNKNOWN) shares[dam] = (shares[dam] ?? 0) + half
    shares[animal] = 0
  }

  /** Additive relationship of two animals: the sum over ancestors of both shares and the ancestor's variance. */
  relationship(a: number, b: number): number {
    const shares = this.#shares
    const others = this.#otherShares
    shares[a] = 1
    others[b] = 1
    let sum = 0
    // Parents have smaller numbers, so one walk down the numbers passes every share on before it is read.
    for (let animal = Math.max(a, b); animal >= 0; animal -= 1) {
      sum += (shares[animal] ?? 0) * (others[animal] ?? 0) * (this.mendelianVariance[animal] ?? 0)
      this.#passUp(shares, animal)
      this.#passUp(others, animal)
    }
    return sum
  }

  /** Calls back with every ancestor of an animal (itself included) and the share of its genes that came through it. */
  forEachAncestor(animal: number, visit: (ancestor: number, share: number) => void): void {
    const shares = this.#shares
    shares[animal] = 1
    for (let ancestor = animal; ancestor >= 0; ancestor -= 1) {
      const share = shares[ancestor] ?? 0
      if (share === 0) continue
      visit(ancestor, share)
      this.#passUp(shares, ancestor)
    }
  }
}
