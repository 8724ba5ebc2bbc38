import { Egg } from './Egg.tsx'

const young: [x: number, y: number][] = [
  [23, 18.5],
  [28, 19],
  [20.5, 22.8],
  [25.5, 23.2],
  [30, 23.6],
  [22.6, 27.6],
  [27.6, 27.9],
]

/** A brood carried in a pouch: the male from his neck to the curl of his tail, with eggs in front of him; open rings once they are born. */
export function PouchGlyph({ size, isEmpty }: { size: number; isEmpty: boolean }) {
  return (
    <svg width={size} height={size} viewBox="0 0 40 40" aria-hidden="true" focusable="false">
      <path
        d="M18 14.5q8-3.5 13.5 2q4.5 5.5 1 11.5q-4.5 6-12.5 3.5q-5-7-2-17Z"
        fill={isEmpty ? 'none' : 'var(--water)'}
        fillOpacity="0.4"
        stroke="var(--ink)"
        strokeWidth="1.8"
        strokeLinejoin="round"
      />
      {young.map(([x, y]) => (
        <Egg key={`${x} ${y}`} stage={isEmpty ? null : 'orange'} {...{ x, y, radius: 2, line: 0.8 }} />
      ))}
      <path
        d="M16 3q4.5 4 2 11.500q-3 10 2 17q2.500 4.500-1.500 6q-4.500 1-5.500-2.500q0-2.800 2.800-2.500"
        fill="none"
        stroke="var(--ink)"
        strokeWidth="2.6"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
      <path
        d="M13.800 9.500l-3.300-1.300M13.200 15l-3.500 0M12.800 20.500l-3.500 1"
        stroke="var(--ink)"
        strokeWidth="1.6"
        strokeLinecap="round"
      />
    </svg>
  )
}
