import { LinkButton } from '@/base/ui/Button.tsx'
import { BucketGlyph } from '@/parts/cultures/BucketGlyph.tsx'
import styles from './nowhere.module.css'

/** An address that leads nowhere: an empty bucket, and the way back. */
export function Nowhere({ href, label }: { href: string; label: string }) {
  return (
    <div className={styles.nowhere}>
      <BucketGlyph size={112} fill={null} />
      <p>Nothing stands at this address. It may be old, or mistyped.</p>
      <LinkButton href={href} variant="filled">
        {label}
      </LinkButton>
    </div>
  )
}
