import type { Mark } from '@fryward/shared'
import styles from './gauges.module.css'

/** Each kind by its shape, around its own middle: a triangle, a filled moon, a drop, a bar that hangs. */
const shapes: Record<Mark['kind'], string> = {
  alarm: 'M0 -6 6.5 5.5 -6.5 5.5Z',
  hatch: 'M0 -5.5a5.5 5.5 0 1 1 0 11a5.5 5.5 0 1 1 0 -11Z',
  water_change: 'M0 -6.5C3 -2 5 0 5 2a5 4.5 0 0 1 -10 0C-5 0 -3 -2 0 -6.5Z',
  harvest: 'M-3 -6H3V6H-3Z',
}

export function MarkSign({ kind, x, y }: { kind: Mark['kind']; x: number; y: number }) {
  return <path className={styles.sign} data-kind={kind} d={shapes[kind]} transform={`translate(${x} ${y})`} />
}
