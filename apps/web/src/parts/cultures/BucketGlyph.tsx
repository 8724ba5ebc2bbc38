import { scatter } from './scatter.ts'

type Props = { size: number; fill: number | null; isGreen?: boolean; hasBackupMark?: boolean }

/** Dots at the culture's own usual density; twice as dense draws twice as many. */
const usualDots = 26
const mostDots = 60
const dots = scatter(mostDots)

/** A culture: a bucket stippled by its density against its own usual. Empty and dashed while nothing was counted. */
export function BucketGlyph({ size, fill, isGreen = false, hasBackupMark = false }: Props) {
  // One dot at least: counted and found empty is not the same as never counted.
  const count = fill === null ? 0 : Math.max(1, Math.min(mostDots, Math.round(fill * usualDots)))
  const tint = fill === null ? 0 : Math.min(0.75, 0.3 * fill + 0.12)
  return (
    <svg width={size} height={size} viewBox="0 0 40 40" aria-hidden="true" focusable="false">
      <path
        d="M8 12h24l-2.6 22.5q-.2 1.5-1.8 1.5H12.4q-1.6 0-1.8-1.5Z"
        fill={isGreen ? 'var(--green)' : 'var(--water)'}
        opacity={tint + 0.15}
      />
      {dots.slice(0, count).map(([x, y]) => (
        <circle key={`${x} ${y}`} cx={11.5 + x * 17} cy={15 + y * 18.5} r="0.95" fill="var(--ink)" />
      ))}
      <path
        d="M6 8h28v4H6zM8 12h24l-2.6 22.5q-.2 1.5-1.8 1.5H12.4q-1.6 0-1.8-1.5Z"
        fill="none"
        stroke="var(--ink)"
        strokeWidth="1.8"
        strokeLinejoin="round"
        strokeDasharray={fill === null ? '3 2.5' : undefined}
      />
      {hasBackupMark && <path d="M13 4.5h14" stroke="var(--ink)" strokeWidth="2.4" strokeLinecap="round" />}
    </svg>
  )
}
