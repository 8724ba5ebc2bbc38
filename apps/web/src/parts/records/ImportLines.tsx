import type { ImportLine } from '@fryward/shared'
import styles from './file-import.module.css'

// A person looks at no more; lines that are left out come first where there are more.
const mostShown = 200

/** Each line of a file as it was read, those that are left out with why. */
export function ImportLines({ lines }: { lines: ImportLine[] }) {
  if (lines.length === 0) return null
  const isBad = ({ problem }: ImportLine) => problem !== null
  const shown = lines.length <= mostShown ? lines : lines.toSorted((a, b) => Number(isBad(b)) - Number(isBad(a)))
  return (
    <>
      <Lines lines={shown.slice(0, mostShown)} />
      {lines.length > mostShown && <p>And {lines.length - mostShown} more lines.</p>}
    </>
  )
}

function Lines({ lines }: { lines: ImportLine[] }) {
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
