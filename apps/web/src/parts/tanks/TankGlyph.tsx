/** A tank: a box with its level. Stored water has a lid and no animals in it. */
export function TankGlyph({ size, isStored = false }: { size: number; isStored?: boolean }) {
  return (
    <svg width={size} height={size} viewBox="0 0 40 40" aria-hidden="true" focusable="false">
      <rect x="5" y="14" width="30" height="20" fill="var(--water)" opacity="0.55" />
      <path d="M5 14q3.75-2.4 7.5 0t7.5 0 7.5 0 7.5 0" fill="none" stroke="var(--ink)" strokeWidth="1.4" />
      <path d="M5 8v26h30V8" fill="none" stroke="var(--ink)" strokeWidth="1.8" strokeLinejoin="round" />
      {isStored && <path d="M3.5 8h33" stroke="var(--ink)" strokeWidth="2.4" strokeLinecap="round" />}
    </svg>
  )
}
