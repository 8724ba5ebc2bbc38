import styles from './forms.module.css'

type Props = { label: string; isOn: boolean; onSwitch: (isOn: boolean) => void }

/** On or off, said in a word beside the knob. */
export function Switch({ label, isOn, onSwitch }: Props) {
  return (
    <button
      type="button"
      role="switch"
      aria-checked={isOn}
      aria-label={label}
      className={styles.switch}
      onClick={() => onSwitch(!isOn)}
    >
      <span className={styles.switchTrack} aria-hidden="true" />
      <span aria-hidden="true">{isOn ? 'On' : 'Off'}</span>
    </button>
  )
}
