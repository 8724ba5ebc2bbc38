import { Egg } from './Egg.tsx'

// Most of them just under the surface, where they gather.
const eggs: [x: number, y: number][] = [
  [6.5, 14.5],
  [13, 15.2],
  [19.8, 13.8],
  [26, 15.4],
  [33, 14.4],
  [9.8, 20.6],
  [17, 21.4],
  [23.6, 20.6],
  [30, 21.2],
  [14, 27.4],
  [27.2, 28],
]

/** Eggs that float, under the surface; open rings once they have hatched. */
export function FloatingGlyph({ size, isEmpty }: { size: number; isEmpty: boolean }) {
  return (
    <svg width={size} height={size} viewBox="0 0 40 40" aria-hidden="true" focusable="false">
      <path
        d="M3 9q4.25-3.4 8.5 0t8.5 0t8.5 0t8.5 0"
        fill="none"
        stroke="var(--ink)"
        strokeWidth="1.8"
        strokeLinecap="round"
      />
      {eggs.map(([x, y]) => (
        <Egg key={`${x} ${y}`} stage={isEmpty ? null : 'silver'} {...{ x, y, radius: 2, line: 0.8 }} />
      ))}
    </svg>
  )
}
