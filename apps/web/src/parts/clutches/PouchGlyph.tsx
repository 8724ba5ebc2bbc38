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
        d="M27 9.5l-6.5-2.8q-4.2-4-6-.4q-.6 2.6 2.3 4.2q2.2 1.6 1.2 4q-3 10 2 17q2.5 4.5-1.5 6q-4.5 1-5.5-2.5q0-2.8 2.8-2.5"
        fill="none"
        stroke="var(--ink)"
        strokeWidth="2.6"
        strokeLinecap="round"
        strokeLinejoin="round"
      />
      <path d="M13.2 15.5l-3.5-.5M12.8 21l-3.5 1" stroke="var(--ink)" strokeWidth="1.6" strokeLinecap="round" />
    </svg>
  )
}
