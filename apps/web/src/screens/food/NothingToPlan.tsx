import { useRoom } from '@/base/room/room-context.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'

/** A room in which nothing gives rotifers and nothing will want them. */
export function NothingToPlan() {
  const room = useRoom()
  return (
    <Notice title="Nothing to plan yet">
      <p>Add a rotifer culture and a pair or larvae: what they can give and will want is then drawn here.</p>
      <LinkButton href={`/rooms/${room.id}/add`} variant="filled">
        Add something
      </LinkButton>
    </Notice>
  )
}
