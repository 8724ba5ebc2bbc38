import { encode } from 'uqr'
import styles from './account.module.css'

/** Dark on light in every look: that is what cameras read. Its text twin is the link beside it. */
export function QrCode({ text, label }: { text: string; label: string }) {
  const { data, size } = encode(text, { ecc: 'M', border: 4 })
  const dots = data.flatMap((row, y) => row.flatMap((isDark, x) => (isDark ? [`M${x} ${y}h1v1h-1z`] : [])))
  return (
    <svg
      className={styles.qr}
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
    >
      <path d={`M0 0h${size}v${size}h-${size}z`} fill="#fff" />
      <path d={dots.join('')} fill="#000" />
    </svg>
  )
}
