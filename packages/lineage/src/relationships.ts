import { PedigreeError } from './errors.ts'
import { GeneFlow } from './gene-flow.ts'
import { orderPedigree, type PedigreeEntry, UNKNOWN } from './pedigree.ts'

/** Where genes come from when nothing is known before: a founder, or the unknown parent of an animal. */
export type FounderShare = {
  animalId: string
  role: 'founder' | 'unknown sire' | 'unknown dam'
  /** Share of the animal's genes; all of an animal's shares add up to 1. */
  share: number
}

export type Relationships = {
  /** Additive relationship (twice the kinship): 0 for strangers, 0.5 for full sibs of strangers; with itself 1 + inbreeding. */
  between: (a: string, b: string) => number
  /** Wright's inbreeding coefficient, 0 to 1. */
  inbreeding: (id: string) => number
  /** Inbreeding that young of these two would have. */
  offspringInbreeding: (pair: { sireId: string; damId: string }) => number
  /** Variance of an animal's breeding value that its parents leave open, in units of the additive variance. */
  mendelianVariance: (id: string) => number
  founderShares: (id: string) => FounderShare[]
  /** Animals with no known parent. Wild-caught fish are among them; all are taken as unrelated and not inbred. */
  founders: readonly string[]
  /** Animals with one known parent: the other is taken as an unrelated founder. */
  halfKnown: readonly string[]
}

/**
 * Relationship and inbreeding in a pedigree, by Henderson's tabular method, its factors kept and not its table: building
 * takes well under a second for 10,000 animals, each question one walk up the ancestors. Entries may come in any order;
 * one fish may be sire here and dam there, as some change sex.
 * @throws PedigreeError for an id that is missing, double or unknown, one animal as both parents, a loop, or a parent
 * that is not older than its child (bornOn); the functions throw it for an id that the pedigree does not hold.
 */
export function relationships(pedigree: readonly PedigreeEntry[]): Relationships {
  const ordered = orderPedigree(pedigree)
  const flow = new GeneFlow(ordered)
  const { ids, indexOf, sires, dams } = ordered

  const find = (id: string): number => {
    const index = indexOf.get(id)
    if (index !== undefined) return index
    const message = `animal "${id}" is not in the pedigree; allowed: one of its ${ids.length} ids`
    throw new PedigreeError({ problem: 'unknown-id', animalId: id, message })
  }
  const unknownParents = (index: number) => [sires[index], dams[index]].filter((parent) => parent === UNKNOWN).length
  const between = (a: string, b: string) => flow.relationship(find(a), find(b))

  return {
    between,
    inbreeding: (id) => flow.inbreeding[find(id)] ?? 0,
    mendelianVariance: (id) => flow.mendelianVariance[find(id)] ?? 0,
    offspringInbreeding: ({ sireId, damId }) => {
      if (sireId !== damId) return between(sireId, damId) / 2
      const message = `animal "${sireId}" is named as sire and dam; allowed: two different animals`
      throw new PedigreeError({ problem: 'same-parent-twice', animalId: sireId, message })
    },
    founderShares: (id) => {
      const shares: FounderShare[] = []
      flow.forEachAncestor(find(id), (ancestor, share) => {
        const animalId = ids[ancestor] ?? ''
        const unknown = unknownParents(ancestor)
        if (unknown === 2) shares.push({ animalId, role: 'founder', share })
        if (unknown !== 1) return
        const role = sires[ancestor] === UNKNOWN ? 'unknown sire' : 'unknown dam'
        shares.push({ animalId, role, share: share / 2 })
      })
      return shares
    },
    founders: ids.filter((_, index) => unknownParents(index) === 2),
    halfKnown: ids.filter((_, index) => unknownParents(index) === 1),
  }
}

/**
 * Inbreeding coefficient that young of two animals would have: half their relationship (Wright 1922, Am. Nat. 56:330-338).
 * For many pairs of one pedigree build relationships once and ask it.
 * @throws PedigreeError as for relationships, or when sire and dam are one animal.
 */
export function offspringInbreeding(
  pedigree: readonly PedigreeEntry[],
  pair: { sireId: string; damId: string },
): number {
  return relationships(pedigree).offspringInbreeding(pair)
}
