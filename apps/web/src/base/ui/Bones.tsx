import styles from './bones.module.css'

/** Grey boxes of the final heights (rem), announced once to those who listen. */
export function Bones({ heights }: { heights: number[] }) {
  return (
    <div className={styles.bones}>
      <span className={styles.said} role="status">
        Loading
      </span>
      {heights.map((height, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a fixed list of grey boxes
        <div key={i} className={styles.bone} style={{ height: `${height}rem` }} aria-hidden="true" />
      ))}
    </div>
  )
}
