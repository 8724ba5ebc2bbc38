import type { ImportLine } from '@fryward/shared'
import styles from './records.module.css'

/** Each line of a file as it was read, those that are left out with why. */
export function ImportLines({ lines }: { lines: ImportLine[] }) {
  if (lines.length === 0) return null
  return (
    <ul className={styles.lines} aria-label="Lines of the file">
      {lines.map(({ line, text, thing, date, problem }) => (
        <li key={line} className={styles.line} data-bad={problem !== null || undefined}>
          <strong>Line {line}</strong>{' '}
          {problem === null ? (
            <>
              {thing}, {date}
            </>
          ) : (
            <span>left out: {problem}</span>
          )}
          <code className={styles.text}>{text}</code>
        </li>
      ))}
    </ul>
  )
}
