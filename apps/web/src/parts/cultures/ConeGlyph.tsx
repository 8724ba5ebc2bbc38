import { scatter } from './scatter.ts'

type Props = { size: number; standing?: 'kept' | 'under_way' | 'asked' | undefined }

const nauplii = scatter(14)

/** A hatch of Artemia: a cone with air from its tip. Cold it has settled and the air is off; not started yet it is dashed and empty. */
export function ConeGlyph({ size, standing = 'under_way' }: Props) {
  return (
    <svg width={size} height={size} viewBox="0 0 40 40" aria-hidden="true" focusable="false">
      {standing !== 'asked' && (
        <path
          d={standing === 'kept' ? 'M14.4 22h11.2L21.5 33h-3Z' : 'M9.6 9h20.8L21.5 33h-3Z'}
          fill="var(--egg-orange, var(--water))"
          opacity={standing === 'kept' ? 0.75 : 0.35}
        />
      )}
      {standing === 'under_way' &&
        nauplii.map(([x, y]) => (
          // Narrower towards the tip.
          <circle
            key={`${x} ${y}`}
            cx={20 + (x - 0.5) * 17 * (1 - 0.75 * y)}
            cy={11 + y * 18}
            r="0.95"
            fill="var(--ink)"
          />
        ))}
      <path
        d="M8 6h24L21.5 33h-3ZM20 33v4"
        fill="none"
        stroke="var(--ink)"
        strokeWidth="1.8"
        strokeLinejoin="round"
        strokeLinecap="round"
        strokeDasharray={standing === 'asked' ? '3 2.5' : undefined}
      />
    </svg>
  )
}
