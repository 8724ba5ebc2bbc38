'use client'

import { Drawer } from '@mantine/core'
import { useMediaQuery } from '@mantine/hooks'
import { type ReactNode, useEffect, useId, useLayoutEffect, useRef, useState } from 'react'
import { createPortal } from 'react-dom'
import { useIsWide } from '@/base/ui/use-is-wide.ts'
import { closeTask } from '@/parts/tasks/open-task.ts'
import styles from './sheet.module.css'

type Props = { title: ReactNode; children: ReactNode }

/**
 * Where a sheet lies: over the list on a phone, beside it where there is room for both. Its content is drawn into an element of
 * its own that either takes in: a tablet turned around must not lose a question that is open, or an answer on its way.
 */
export function SheetFrame({ title, children }: Props) {
  const isWide = useIsWide()
  const [content] = useState(() => {
    const element = document.createElement('div')
    element.className = styles.content ?? ''
    return element
  })
  useFocusBack()
  useMark()
  const Frame = isWide ? SidePanel : OverList
  return (
    <>
      <Frame title={title}>
        <Holds content={content} />
      </Frame>
      {createPortal(children, content)}
    </>
  )
}

function Holds({ content }: { content: HTMLElement }) {
  const place = useRef<HTMLDivElement>(null)
  useLayoutEffect(() => place.current?.replaceChildren(content), [content])
  return <div ref={place} className={styles.content} />
}

function OverList({ title, children }: Props) {
  // Read at once and not in an effect: a drawer that rises from the foot and then jumps to the side is drawn twice.
  const isFromRight = useMediaQuery('(min-width: 62rem)', false, { getInitialValueInEffect: false })
  useHeldPage()
  return (
    <Drawer
      opened
      onClose={closeTask}
      position={isFromRight ? 'right' : 'bottom'}
      size={isFromRight ? '34rem' : '94dvh'}
      title={
        <span tabIndex={-1} data-autofocus className={styles.headline}>
          {title}
        </span>
      }
      closeButtonProps={{ 'aria-label': 'Close', size: 'xl' }}
      classNames={{ content: styles.sheet, header: styles.head, body: styles.body, overlay: styles.overlay }}
      transitionProps={{ duration: 120 }}
      // It would hide the page's bar by a style element, which the page's policy refuses: useHeldPage does.
      removeScrollProps={{ removeScrollBar: false }}
    >
      {children}
    </Drawer>
  )
}

/** The list beside it stays in use, so it holds neither the focus nor the page. */
function SidePanel({ title, children }: Props) {
  const titleId = useId()
  const headline = useRef<HTMLSpanElement>(null)
  useEffect(() => headline.current?.focus({ preventScroll: true }), [])
  useEffect(() => {
    const closeOnEscape = (event: KeyboardEvent) => {
      // A picker or a dialog inside the sheet closes by the same key, and has taken it then.
      if (event.key === 'Escape' && !event.defaultPrevented) closeTask()
    }
    window.addEventListener('keydown', closeOnEscape)
    return () => window.removeEventListener('keydown', closeOnEscape)
  }, [])
  // `open` and not showModal(): what is modal would make the list beside it inert.
  return (
    <dialog open className={styles.panel} aria-labelledby={titleId}>
      <header className={styles.head}>
        <h2 id={titleId}>
          <span ref={headline} tabIndex={-1} className={styles.headline}>
            {title}
          </span>
        </h2>
        <button type="button" className={styles.close} aria-label="Close" onClick={closeTask}>
          <svg viewBox="0 0 20 20" aria-hidden="true">
            <path d="m4 4 12 12M16 4 4 16" stroke="currentColor" strokeWidth="2.2" strokeLinecap="round" />
          </svg>
        </button>
      </header>
      <div className={styles.body}>{children}</div>
    </dialog>
  )
}

/** The list below stays where it is, and as wide as it is: the room that its bar took is left free. */
function useHeldPage(): void {
  const [barPx] = useState(() => window.innerWidth - document.documentElement.clientWidth)
  useEffect(() => {
    const { style } = document.body
    style.overflow = 'hidden'
    style.paddingRight = `${barPx}px`
    return () => {
      style.overflow = ''
      style.paddingRight = ''
    }
  }, [barPx])
}

/** The sheet leaves the page with its address, and so must hand the focus back itself, unless it has gone elsewhere. */
function useFocusBack(): void {
  const [path] = useState(() => pathOf(document.activeElement))
  useEffect(
    () => () => {
      // A frame later: whoever closed it by a tap elsewhere has the focus there by then.
      requestAnimationFrame(() => {
        const isFree = document.activeElement === null || document.activeElement === document.body
        // The line that opened it may read otherwise by now: then what stands in its place, or around it.
        if (isFree) focusOn(path.find((each) => each.isConnected))
      })
    },
    [path],
  )
}

/** An element with all that it stands in, up to the page. */
function pathOf(element: Element | null): HTMLElement[] {
  if (!(element instanceof HTMLElement) || element === document.body) return []
  return [element, ...pathOf(element.parentElement)]
}

function focusOn(place: HTMLElement | undefined): void {
  if (!place) return
  const control = place.matches('a, button') ? place : place.querySelector<HTMLElement>('a, button')
  control?.focus()
}

/** Messages find another place while a sheet is open. */
function useMark(): void {
  useEffect(() => {
    document.documentElement.toggleAttribute('data-sheet', true)
    return () => document.documentElement.removeAttribute('data-sheet')
  }, [])
}
