import styles from './forms.module.css'

export function CheckBox({
  label,
  isChecked,
  onCheck,
}: {
  label: string
  isChecked: boolean
  onCheck: (isChecked: boolean) => void
}) {
  return (
    <label className={styles.check}>
      <input type="checkbox" checked={isChecked} onChange={(event) => onCheck(event.currentTarget.checked)} />
      <span>{label}</span>
    </label>
  )
}
