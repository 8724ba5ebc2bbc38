import type { ReactNode } from 'react'
import { Notice } from '@/base/ui/Notice.tsx'

/** Said wherever a species without a profile is chosen or looked at. */
export function OtherSpeciesNotice({ children }: { children?: ReactNode }) {
  return (
    <Notice title="No profile of this species yet">
      <p>
        Its numbers are borrowed from one that cares for its eggs alike; tasks say from which. Go by what you see, and
        ask somebody who has raised it. Its nights of hatching follow the clutches of this room.
      </p>
      {children}
    </Notice>
  )
}
