'use client'

import { useRouter } from 'next/navigation'
import { type ComponentPropsWithoutRef, type MouseEvent, useTransition } from 'react'
import { useMarkGoing } from './going.ts'

type Props = ComponentPropsWithoutRef<'a'> & { href: string }

/** Asked to open elsewhere: in another tab or window, or as a file. */
const isForElsewhere = (event: MouseEvent<HTMLAnchorElement>) =>
  event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey

/**
 * A way to another page of the dashboard, without loading the whole page anew. Next's own link is made to fetch pages
 * ahead, which a phone on a weak network has no room for, and was a tenth of the script beside the framework's.
 */
export function Link({ href, onClick, ...rest }: Props) {
  const router = useRouter()
  const [isGoing, go] = useTransition()
  useMarkGoing(isGoing)
  return (
    <a
      {...rest}
      aria-busy={isGoing || undefined}
      href={href}
      onClick={(event) => {
        onClick?.(event)
        if (event.defaultPrevented || isForElsewhere(event)) return
        event.preventDefault()
        go(() => router.push(href))
      }}
    />
  )
}
