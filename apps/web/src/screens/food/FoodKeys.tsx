import styles from './food.module.css'

/** What each mark of the chart stands for. */
export function FoodKeys({ isChanged }: { isChanged: boolean }) {
  return (
    <ul className={styles.keys}>
      <li>
        <Key band={styles.foodBand} line={styles.food} /> what the cultures could give
      </li>
      <li>
        <Key line={styles.mouths} /> what the larvae want
      </li>
      {isChanged && (
        <li>
          <Key line={styles.mouthsBefore} /> as it is now
        </li>
      )}
    </ul>
  )
}

function Key({ band, line }: { band?: string | undefined; line: string | undefined }) {
  return (
    <svg width="34" height="18" aria-hidden="true" focusable="false">
      {band && <rect className={band} width="34" height="18" />}
      <path className={line} d="M0 9h34" />
    </svg>
  )
}
