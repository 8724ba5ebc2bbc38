/** A night ahead: a small moon filled from the bottom by how likely hatching is on it. */
export function Moon({ probability, size = 34 }: { probability: number; size?: number }) {
  const share = Math.max(0, Math.min(1, probability))
  const level = 30 - share * 24
  const id = `moon-${Math.round(share * 1000)}`
  return (
    <svg width={size} height={size} viewBox="0 0 36 36" aria-hidden="true" focusable="false">
      <clipPath id={id}>
        <circle cx="18" cy="18" r="12" />
      </clipPath>
      <rect x="4" y={level} width="28" height={34 - level} fill="var(--deed)" clipPath={`url(#${id})`} />
      <circle cx="18" cy="18" r="12" fill="none" stroke="var(--ink)" strokeWidth="1.8" />
    </svg>
  )
}
