/** A pair: a large and a small fish, nose to tail. */
export function PairGlyph({ size }: { size: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 40 40" aria-hidden="true" focusable="false">
      <path
        d="M4 15q8-9 19-1.5l6-4.5v11l-6-4Q12 24 4 15Z"
        fill="var(--egg-orange)"
        stroke="var(--ink)"
        strokeWidth="1.7"
        strokeLinejoin="round"
      />
      <circle cx="9.5" cy="13.8" r="1.2" fill="var(--ink)" />
      <path
        d="M36 29q-5.5-6-12.5-1l-4.2-2.8v7.4l4.2-2.6Q30.5 35 36 29Z"
        fill="var(--egg-orange)"
        stroke="var(--ink)"
        strokeWidth="1.7"
        strokeLinejoin="round"
      />
      <circle cx="32" cy="28" r="1.1" fill="var(--ink)" />
    </svg>
  )
}
