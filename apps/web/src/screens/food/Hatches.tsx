import type { FoodOutlook, PlainDate } from '@fryward/shared'
import { sayHatch } from '@fryward/words'
import { useVoice } from '@/base/room/room-context.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { ConeGlyph } from '@/parts/cultures/ConeGlyph.tsx'
import styles from './food.module.css'

/** Hatches of Artemia that batches may eat of: each with what it gives, from when on, and how long. */
export function Hatches({ outlook, today }: { outlook: FoodOutlook; today: PlainDate }) {
  const voice = useVoice()
  const hatches = outlook.hatches ?? []
  const isEaten = outlook.days.some(({ artemia }) => artemia !== undefined && artemia.batches.length > 0)
  if (hatches.length === 0 && !isEaten) return null
  return (
    <Section title="Artemia">
      {hatches.length === 0 && <p className={styles.soft}>No hatch is under way and none is on today’s list.</p>}
      <ul className={styles.cures}>
        {hatches.map((hatch) => (
          <li key={hatch.id} className={styles.hatch}>
            <ConeGlyph size={34} standing={hatch.standing} />
            <span>
              <strong>{hatch.name}</strong>: {sayHatch(hatch, { today, voice })}
            </span>
          </li>
        ))}
      </ul>
    </Section>
  )
}
