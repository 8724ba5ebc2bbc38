import styles from './timeline.module.css'

const signs = {
  more: <path d="M4 12h.01M12 12h.01M20 12h.01" strokeWidth="4" />,
  unfold: <path d="m5 9 7 7 7-7" strokeWidth="2.4" />,
}

type Props = {
  sign: keyof typeof signs
  label: string
  isOpen: boolean
  /** Id of what it opens. */
  controls: string
  onPress: () => void
}

/** The one button at the end of a line of the timeline, as large as a thumb needs. */
export function LineButton({ sign, label, isOpen, controls, onPress }: Props) {
  return (
    <button
      type="button"
      className={styles.lineButton}
      data-sign={sign}
      aria-label={label}
      aria-expanded={isOpen}
      aria-controls={isOpen ? controls : undefined}
      onClick={onPress}
    >
      <svg viewBox="0 0 24 24" aria-hidden="true" fill="none" stroke="currentColor" strokeLinecap="round">
        {signs[sign]}
      </svg>
    </button>
  )
}
