import { PedigreeError } from './errors.ts'

/** One animal and its parents. A parent that is missing or null is unknown: an unrelated founder is assumed. */
export type PedigreeEntry = {
  id: string
  sireId?: string | null
  damId?: string | null
  /** Date of hatching, YYYY-MM-DD; where parent and child both have one, the parent's must be the earlier. */
  bornOn?: string | null
}

/** A checked pedigree by number: every parent has a smaller number than its children, -1 stands for an unknown one. */
export type OrderedPedigree = {
  ids: readonly string[]
  indexOf: ReadonlyMap<string, number>
  sires: Int32Array
  dams: Int32Array
}

export const UNKNOWN = -1

const DATE = /^\d{4}-\d{2}-\d{2}$/

function indexById(pedigree: readonly PedigreeEntry[]): Map<string, number> {
  const byId = new Map<string, number>()
  pedigree.forEach(({ id }, index) => {
    if (typeof id !== 'string' || id === '') {
      const message = `entry ${index} of the pedigree has no id; allowed: a text that is not empty`
      throw new PedigreeError({ problem: 'missing-id', animalId: String(id), message })
    }
    if (byId.has(id)) {
      const message = `animal "${id}" is in the pedigree twice; allowed: one entry for each animal`
      throw new PedigreeError({ problem: 'duplicate-id', animalId: id, message })
    }
    byId.set(id, index)
  })
  return byId
}

function checkDate({ id, bornOn }: PedigreeEntry): void {
  if (bornOn == null) return
  if (DATE.test(bornOn) && !Number.isNaN(Date.parse(bornOn))) return
  const message = `animal "${id}" has bornOn "${bornOn}"; allowed: a date as YYYY-MM-DD`
  throw new PedigreeError({ problem: 'bad-date', animalId: id, message })
}

function checkParent(child: PedigreeEntry, parent: PedigreeEntry, role: 'sire' | 'dam'): void {
  // Dates of one form sort as text.
  if (parent.bornOn == null || child.bornOn == null || parent.bornOn < child.bornOn) return
  const message =
    `animal "${child.id}" (born ${child.bornOn}) has ${role} "${parent.id}" born ${parent.bornOn}; ` +
    'allowed: a parent born before its child'
  throw new PedigreeError({ problem: 'parent-younger-than-child', animalId: child.id, message })
}

type Parents = { sire: number; dam: number }

function parentIndex(
  entry: PedigreeEntry,
  { role, pedigree, byId }: { role: 'sire' | 'dam'; pedigree: readonly PedigreeEntry[]; byId: Map<string, number> },
): number {
  const parentId = role === 'sire' ? entry.sireId : entry.damId
  if (parentId == null) return UNKNOWN
  const index = byId.get(parentId)
  const parent = index === undefined ? undefined : pedigree[index]
  if (index === undefined || parent === undefined) {
    const message = `animal "${entry.id}" has ${role} "${parentId}", which is not in the pedigree; allowed: an id in it, or none`
    throw new PedigreeError({ problem: 'unknown-id', animalId: parentId, message })
  }
  checkParent(entry, parent, role)
  return index
}

function findParents(pedigree: readonly PedigreeEntry[], byId: Map<string, number>): Parents[] {
  pedigree.forEach(checkDate)
  return pedigree.map((entry) => {
    const sire = parentIndex(entry, { role: 'sire', pedigree, byId })
    const dam = parentIndex(entry, { role: 'dam', pedigree, byId })
    if (sire !== UNKNOWN && sire === dam) {
      const message = `animal "${entry.id}" has "${entry.sireId}" as sire and dam; allowed: two different animals`
      throw new PedigreeError({ problem: 'same-parent-twice', animalId: entry.id, message })
    }
    return { sire, dam }
  })
}

const known = ({ sire, dam }: Parents) => [sire, dam].filter((index) => index !== UNKNOWN)

/** Entry numbers with parents before children (Kahn 1962, Commun. ACM 5:558-562); shorter than the pedigree when there is a loop. */
function orderByDescent(parents: readonly Parents[]): number[] {
  const children: number[][] = parents.map(() => [])
  const waitingFor = parents.map((pair, child) => {
    for (const parent of known(pair)) children[parent]?.push(child)
    return known(pair).length
  })
  const order = waitingFor.flatMap((count, index) => (count === 0 ? [index] : []))
  for (let next = 0; next < order.length; next += 1) {
    for (const child of children[order[next] ?? UNKNOWN] ?? []) {
      const left = (waitingFor[child] ?? 0) - 1
      waitingFor[child] = left
      if (left === 0) order.push(child)
    }
  }
  return order
}

/** The loop that keeps some animals from being ordered, child before parent. */
function findLoop(parents: readonly Parents[], ordered: ReadonlySet<number>): number[] {
  const isStuck = (index: number) => !ordered.has(index)
  const path: number[] = []
  const seenAt = new Map<number, number>()
  let index: number | undefined = parents.findIndex((_, candidate) => isStuck(candidate))
  // Every stuck animal has a stuck parent, so walking up must come round.
  while (index !== undefined) {
    const start = seenAt.get(index)
    if (start !== undefined) return path.slice(start)
    seenAt.set(index, path.length)
    path.push(index)
    const pair: Parents | undefined = parents[index]
    index = pair === undefined ? undefined : known(pair).find(isStuck)
  }
  return path
}

function throwLoop(loop: readonly number[], pedigree: readonly PedigreeEntry[]): never {
  const ids = loop.map((index) => pedigree[index]?.id ?? '')
  const animalId = ids[0] ?? ''
  const shown = ids.length > 8 ? [...ids.slice(0, 8), '...'] : ids
  const message = `animal "${animalId}" is its own ancestor: ${[...shown, animalId].map((id) => `"${id}"`).join(' out of ')}`
  throw new PedigreeError({ problem: 'loop', animalId, message })
}

/**
 * Checks a pedigree and numbers its animals so that parents come before children; the entries may come in any order.
 * @throws PedigreeError for an id that is missing, double or unknown, one animal as both parents, a loop, or a parent
 * that is not older than its child.
 */
export function orderPedigree(pedigree: readonly PedigreeEntry[]): OrderedPedigree {
  const byId = indexById(pedigree)
  const parents = findParents(pedigree, byId)
  const order = orderByDescent(parents)
  if (order.length < pedigree.length) throwLoop(findLoop(parents, new Set(order)), pedigree)
  const rank = new Int32Array(pedigree.length)
  order.forEach((entry, position) => {
    rank[entry] = position
  })
  const ranked = (index: number | undefined) =>
    index === undefined || index === UNKNOWN ? UNKNOWN : (rank[index] ?? UNKNOWN)
  const ids = order.map((entry) => pedigree[entry]?.id ?? '')
  return {
    ids,
    indexOf: new Map(ids.map((id, position) => [id, position])),
    sires: Int32Array.from(order, (entry) => ranked(parents[entry]?.sire)),
    dams: Int32Array.from(order, (entry) => ranked(parents[entry]?.dam)),
  }
}
