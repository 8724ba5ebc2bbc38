import type { ButtonHTMLAttributes, ReactNode } from 'react'
import styles from './button.module.css'
import { Link } from './Link.tsx'

type Variant = 'filled' | 'default' | 'subtle'
type Look = { variant?: Variant; isWide?: boolean; isLarge?: boolean }
type Props = ButtonHTMLAttributes<HTMLButtonElement> & Look & { isBusy?: boolean }

const classesOf = ({ variant = 'default', isWide, isLarge }: Look, extra?: string) =>
  [styles.button, styles[variant], isWide && styles.wide, isLarge && styles.large, extra].filter(Boolean).join(' ')

/** A button at thumb size. Filled is "do this"; while busy it keeps its words, its width and the focus. */
export function Button({ variant, isWide, isLarge, isBusy = false, className, type, onClick, ...rest }: Props) {
  return (
    <button
      {...rest}
      type={type ?? 'button'}
      className={classesOf(
        { ...(variant && { variant }), ...(isWide && { isWide }), ...(isLarge && { isLarge }) },
        className,
      )}
      aria-busy={isBusy || undefined}
      aria-disabled={isBusy || undefined}
      onClick={(event) => {
        if (isBusy) event.preventDefault()
        else onClick?.(event)
      }}
    />
  )
}

/** A link that looks like a button, for the main way on. */
export function LinkButton({ href, children, ...look }: Look & { href: string; children: ReactNode }) {
  return (
    <Link href={href} className={classesOf(look)}>
      {children}
    </Link>
  )
}
