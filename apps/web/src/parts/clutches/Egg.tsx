import type { EggStage } from '@fryward/shared'

const colours = {
  orange: 'var(--egg-orange)',
  dark: 'var(--egg-dark)',
  eyed: 'var(--egg-eyed)',
  silver: 'var(--egg-silver)',
} as const satisfies Record<EggStage, string>

type Props = { stage: EggStage | null; x: number; y: number; radius: number; line: number }

/**
 * One egg in the colour of its stage, and in a pattern of its own for whoever sees one colour only: plain, barred, with a
 * pupil, with a ring round it. An open ring where it has hatched.
 */
export function Egg({ stage, x, y, radius, line }: Props) {
  return (
    <g data-stage={stage}>
      <circle cx={x} cy={y} r={radius} fill={stage ? colours[stage] : 'none'} stroke="var(--ink)" strokeWidth={line} />
      {stage === 'dark' && (
        <path
          d={`M${x - radius * 0.75} ${y}h${radius * 1.5}`}
          stroke="var(--egg-on-dark)"
          strokeWidth={radius * 0.35}
          fill="none"
        />
      )}
      {(stage === 'eyed' || stage === 'silver') && (
        <circle cx={x} cy={y} r={radius * 0.38} fill={`var(--egg-on-${stage})`} />
      )}
      {stage === 'silver' && (
        <circle cx={x} cy={y} r={radius * 0.72} fill="none" stroke="var(--egg-on-silver)" strokeWidth={radius * 0.14} />
      )}
    </g>
  )
}

/** One egg by itself, for a legend. */
export const EggSample = ({ stage, size }: { stage: EggStage; size: number }) => (
  <svg width={size} height={size} viewBox="0 0 10 10" aria-hidden="true" focusable="false">
    <Egg stage={stage} x={5} y={5} radius={4.3} line={0.7} />
  </svg>
)
