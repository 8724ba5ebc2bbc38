import type { Clutch, EggStage } from '@fryward/shared'
import { Egg } from './Egg.tsx'
import { expectedEggStage } from './egg-colour.ts'
import { FloatingGlyph } from './FloatingGlyph.tsx'
import { MouthGlyph } from './MouthGlyph.tsx'
import { PouchGlyph } from './PouchGlyph.tsx'

type Row = { radius: number; eggs: number }
const rows: Row[] = [
  { radius: 15, eggs: 11 },
  { radius: 10.5, eggs: 8 },
]
/** As one sees a nest from near: more of them, and smaller against the whole. */
const nearRows: Row[] = [
  { radius: 17, eggs: 21 },
  { radius: 14, eggs: 17 },
  { radius: 11, eggs: 13 },
  { radius: 8, eggs: 9 },
]

type Props = { size: number; clutch: Clutch | undefined; isNear?: boolean }

/** A clutch where its kind is kept: on a nest, in a mouth or a pouch, or afloat; hatched ones are open rings. */
export function ClutchGlyph({ size, clutch, isNear = false }: Props) {
  const isEmpty = clutch !== undefined && clutch.state !== 'incubating'
  if (clutch?.care === 'mouth') return <MouthGlyph {...{ size, isEmpty }} />
  if (clutch?.care === 'pouch') return <PouchGlyph {...{ size, isEmpty }} />
  if (clutch?.care === 'pelagic') return <FloatingGlyph {...{ size, isEmpty }} />
  const stage = (clutch && expectedEggStage(clutch)) ?? 'orange'
  return <NestGlyph {...{ size, isNear }} stage={isEmpty ? null : stage} />
}

/** An arc of eggs on a rock, in the colour and pattern of their stage. */
function NestGlyph({ size, stage, isNear }: { size: number; stage: EggStage | null; isNear: boolean }) {
  return (
    <svg width={size} height={size} viewBox="0 0 40 40" aria-hidden="true" focusable="false">
      {(isNear ? nearRows : rows).flatMap(({ radius, eggs }) =>
        Array.from({ length: eggs }, (_, i) => {
          const angle = Math.PI * (0.08 + (0.84 * i) / (eggs - 1))
          const x = 20 - radius * Math.cos(angle)
          const y = 27 - radius * Math.sin(angle)
          const look = isNear ? { radius: 1.25, line: 0.4 } : { radius: 2.1, line: 0.8 }
          return <Egg key={`${radius} ${angle}`} {...{ stage, x, y }} {...look} />
        }),
      )}
      <path
        d="M5 32q15-5 30 0"
        fill="none"
        stroke="var(--ink)"
        strokeWidth={isNear ? 0.9 : 1.8}
        strokeLinecap="round"
      />
    </svg>
  )
}
