'use client'

import { type ComponentType, lazy, type ReactNode, Suspense } from 'react'

/** A part whose script is asked for when the part is first shown, with what stands in its place until then. */
export function later<Props extends object>(load: () => Promise<ComponentType<Props>>, waiting: ReactNode = null) {
  const Part = lazy(async () => ({ default: await load() }))
  return function Later(props: Props) {
    return (
      <Suspense fallback={waiting}>
        <Part {...props} />
      </Suspense>
    )
  }
}
