/** Days from hatching to settled, for the length of the stroke only: 8 to 15 in clownfish. from memory */
const settledDays = 14

/** A larval batch: a stroke that grows with its age, then gets fins once it should have settled. */
export function BatchGlyph({ size, ageDays }: { size: number; ageDays: number }) {
  const share = Math.max(0.08, Math.min(1, ageDays / settledDays))
  const length = 7 + share * 21
  const from = 20 - length / 2
  const thickness = 1.6 + share * 3.6
  return (
    <svg width={size} height={size} viewBox="0 0 40 40" aria-hidden="true" focusable="false">
      <path
        d={`M${from} 20q${length * 0.3} ${-thickness} ${length * 0.55} 0t${length * 0.45} 0`}
        fill="none"
        stroke="var(--ink)"
        strokeWidth={thickness}
        strokeLinecap="round"
      />
      <circle cx={from + 1} cy={20 - thickness * 0.15} r={0.7 + share * 0.6} fill="var(--paper)" />
      {share >= 1 && <path d="M20 15.5l3-4M20 24l3 4.5" stroke="var(--ink)" strokeWidth="1.8" strokeLinecap="round" />}
      <path d="M4 35q16 3 32 0" fill="none" stroke="var(--water)" strokeWidth="2.4" strokeLinecap="round" />
    </svg>
  )
}
