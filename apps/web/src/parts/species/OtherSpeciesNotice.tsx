import { Notice } from '@/base/ui/Notice.tsx'

/** Said wherever a species without a profile is chosen or looked at. */
export function OtherSpeciesNotice() {
  return (
    <Notice title="No profile of this species yet">
      <p>
        Its numbers are borrowed from the orchid dottyback, which is slower and has a smaller mouth than a clownfish. Go
        by what you see, and ask somebody who has raised it. Its nights of hatching follow the clutches of this room.
      </p>
    </Notice>
  )
}
