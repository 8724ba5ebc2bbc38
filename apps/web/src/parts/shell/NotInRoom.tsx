import { LinkButton } from '@/base/ui/Button.tsx'
import { Doorway } from '@/parts/doorway/Doorway.tsx'

/** Instead of every page of a room whose door is shut to whoever is signed in; what they saw of it goes. */
export function NotInRoom({ name }: { name: string | undefined }) {
  return (
    <Doorway title={name === undefined ? 'Not your room' : `You are not in ${name} any more`}>
      <p>
        {name === undefined
          ? 'You are not in this room, or it is not on this server. An owner of it can send you an invitation link.'
          : 'You left it, or an owner took you out. If that was not meant, ask an owner for an invitation link.'}
      </p>
      <p>What you had begun to type here is still on this device, and is there again when you are.</p>
      <LinkButton href="/rooms?choose=1" variant="filled">
        Your rooms
      </LinkButton>
    </Doorway>
  )
}
