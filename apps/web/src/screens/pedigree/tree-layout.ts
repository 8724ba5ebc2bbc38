import type { Pedigree } from '@fryward/shared'

export type TreeNode = {
  id: string
  name: string
  isLiving: boolean
  offspringInbreeding: number
  x: number
  y: number
}
/** From the pair that laid the clutch to the pair that one of its young is in. */
export type TreeLink = { from: TreeNode; to: TreeNode; sex: 'female' | 'male' }
export type Tree = { nodes: TreeNode[]; links: TreeLink[]; width: number; height: number }

/** A pair's box in px, and the space between two of one generation and between generations. */
export const box = { width: 128, height: 52, gapX: 18, gapY: 54 } as const

/** Pairs of one species, founders above and each generation below the one before, in order of when they came. */
export function layOut({ fish, pairs }: Pedigree, species: string): Tree {
  const own = pairs.filter((pair) => pair.species === species)
  const rows = new Map<number, number>()
  const nodes = own.map((pair): TreeNode => {
    const place = rows.get(pair.generation) ?? 0
    rows.set(pair.generation, place + 1)
    return {
      ...{ id: pair.pair.id, name: pair.pair.name, isLiving: pair.isLiving },
      offspringInbreeding: pair.offspringInbreeding,
      x: place * (box.width + box.gapX),
      y: pair.generation * (box.height + box.gapY),
    }
  })
  const byId = new Map(nodes.map((node) => [node.id, node]))
  const links = fish.flatMap(({ pair, parents, sex }): TreeLink[] => {
    const [from, to] = [byId.get(parents?.id ?? ''), byId.get(pair.id)]
    return from && to ? [{ from, to, sex }] : []
  })
  const [widest, deepest] = [Math.max(1, ...rows.values()), Math.max(0, ...rows.keys())]
  return {
    ...{ nodes, links },
    width: widest * (box.width + box.gapX) - box.gapX,
    height: (deepest + 1) * (box.height + box.gapY) - box.gapY,
  }
}
