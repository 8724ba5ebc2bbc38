'use client'

import type { Pedigree } from '@fryward/shared'
import { sayNumber } from '@fryward/words'
import { linkVertical } from 'd3-shape'
import charts from '@/base/charts/charts.module.css'
import { useVoice } from '@/base/room/room-context.tsx'
import styles from './pedigree.module.css'
import { box, layOut, type TreeLink, type TreeNode } from './tree-layout.ts'

type Point = { x: number; y: number }
const path = linkVertical<{ source: Point; target: Point }, Point>()
  .x(({ x }) => x)
  .y(({ y }) => y)

/** Generations of pairs from top to bottom; a whole line leads from parents to a daughter, a dashed one to a son. */
export function FamilyTree({ pedigree, species, label }: { pedigree: Pedigree; species: string; label: string }) {
  const { nodes, links, width, height } = layOut(pedigree, species)
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable by keyboard
    <section className={charts.scroll} tabIndex={0} aria-label={label}>
      <svg
        width={width + 4}
        height={height + 4}
        viewBox={`-2 -2 ${width + 4} ${height + 4}`}
        role="img"
        aria-label={label}
      >
        {links.map((link) => (
          <path
            key={`${link.from.id} ${link.to.id} ${link.sex}`}
            className={styles.link}
            data-sex={link.sex}
            d={path(endsOf(link)) ?? ''}
          />
        ))}
        {nodes.map((node) => (
          <Pair key={node.id} node={node} />
        ))}
      </svg>
    </section>
  )
}

/** The daughter hangs left of the middle of her pair, the son right of it. */
function endsOf({ from, to, sex }: TreeLink): { source: Point; target: Point } {
  const aside = sex === 'female' ? -box.width / 5 : box.width / 5
  return {
    source: { x: from.x + box.width / 2, y: from.y + box.height },
    target: { x: to.x + box.width / 2 + aside, y: to.y },
  }
}

/** Letters that a box takes. */
const longest = 14

function Pair({ node }: { node: TreeNode }) {
  const voice = useVoice()
  const name = node.name.length > longest ? `${node.name.slice(0, longest - 1)}…` : node.name
  return (
    <g transform={`translate(${node.x} ${node.y})`}>
      <rect
        className={styles.pair}
        data-ended={node.isLiving ? undefined : ''}
        width={box.width}
        height={box.height}
        rx={10}
      />
      <text className={styles.pairName} x={box.width / 2} y={22} textAnchor="middle">
        {name}
      </text>
      <text className={charts.tick} x={box.width / 2} y={41} textAnchor="middle">
        {node.isLiving ? `young ${sayNumber(node.offspringInbreeding * 100, voice)}% inbred` : 'ended'}
      </text>
    </g>
  )
}
