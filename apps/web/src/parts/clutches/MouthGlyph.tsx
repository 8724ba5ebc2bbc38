import { Egg } from './Egg.tsx'

const brood: [x: number, y: number][] = [
  [10.4, 24],
  [15, 23.2],
  [19.6, 23.2],
  [24.2, 23.6],
  [13, 28.2],
  [17.6, 28.3],
  [22.2, 28.3],
]

/** A brood carried in the mouth: a head from the side, its throat full; open rings once they are out. */
export function MouthGlyph({ size, isEmpty }: { size: number; isEmpty: boolean }) {
  return (
    <svg width={size} height={size} viewBox="0 0 40 40" aria-hidden="true" focusable="false">
      <path
        d="M5 19q-1 10 7 13.5q9 3.5 17.5-1.5q2.5-5 1-11q-13-3-25.5-1Z"
        fill={isEmpty ? 'none' : 'var(--water)'}
        fillOpacity="0.4"
        stroke="var(--ink)"
        strokeWidth="1.8"
        strokeLinejoin="round"
      />
      {brood.map(([x, y]) => (
        <Egg key={`${x} ${y}`} stage={isEmpty ? null : 'orange'} {...{ x, y, radius: 2, line: 0.8 }} />
      ))}
      <path
        d="M5 19q4-7.5 11-10.5q9-4 20-1M29.5 31q3.5-.6 6.5-2.5M30.5 20q-.2-4-2.2-7.5"
        fill="none"
        stroke="var(--ink)"
        strokeWidth="2.2"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
      <circle cx="16.5" cy="14" r="2" fill="var(--ink)" />
    </svg>
  )
}
