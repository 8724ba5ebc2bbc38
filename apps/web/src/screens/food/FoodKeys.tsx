import { Moon } from '@/base/ui/Moon.tsx'
import styles from './food.module.css'

/** What each mark of the chart stands for. */
export function FoodKeys({ isChanged, hasNights }: { isChanged: boolean; hasNights: boolean }) {
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
