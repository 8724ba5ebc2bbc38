import { Moon } from '@/base/ui/Moon.tsx'
import { ConeGlyph } from '@/parts/cultures/ConeGlyph.tsx'
import styles from './food.module.css'

type Props = { isChanged: boolean; hasNights: boolean; hasHatches: boolean }

/** What each mark of the chart stands for. */
export function FoodKeys({ isChanged, hasNights, hasHatches }: Props) {
  return (
    <ul className={styles.keys}>
      <li>
        <Key band={styles.foodBand} line={styles.food} /> rotifers that the cultures could give in a day
      </li>
      <li>
        <Key isHatched line={styles.mouths} /> rotifers that the larvae want
      </li>
      {hasNights && (
        <li>
          <Moon probability={0.5} size={18} /> nights on which larvae may hatch, filled by how likely
        </li>
      )}
      {hasHatches && (
        <li>
          <ConeGlyph size={20} /> hatches of Artemia, on the day from which they are food
        </li>
      )}
      {isChanged && (
        <li>
          <Key line={styles.mouthsBefore} /> as it is now
        </li>
      )}
    </ul>
  )
}

type KeyProps = { band?: string | undefined; line: string | undefined; isHatched?: boolean }

function Key({ band, line, isHatched = false }: KeyProps) {
  return (
    <svg width="34" height="18" aria-hidden="true" focusable="false">
      {band && <rect className={band} width="34" height="18" />}
      {isHatched && <path className={styles.mouthsLine} d="M0 9L9 0M2 18L20 0M13 18L31 0M24 18L34 8" />}
      <path className={line} d="M0 9h34" />
    </svg>
  )
}
