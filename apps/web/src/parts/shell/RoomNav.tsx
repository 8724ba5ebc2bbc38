'use client'

import type { Room } from '@fryward/shared'
import { roleLabels } from '@fryward/words'
import { usePathname } from 'next/navigation'
import { Link } from '@/base/ui/Link.tsx'
import { NavIcon, type NavIconName } from './nav-icons.tsx'
import styles from './shell.module.css'

type Place = { href: string; label: string; icon: NavIconName; isOnPhone: boolean }

const placesOf = (roomId: string): Place[] => {
  const base = `/rooms/${roomId}`
  return [
    { href: `${base}/today`, label: 'Today', icon: 'today', isOnPhone: true },
    { href: `${base}/room`, label: 'Room', icon: 'room', isOnPhone: true },
    { href: `${base}/hand-over`, label: 'Hand-over', icon: 'handOver', isOnPhone: true },
    { href: `${base}/food`, label: 'Food ahead', icon: 'food', isOnPhone: false },
    { href: `${base}/survival`, label: 'Survival', icon: 'survival', isOnPhone: false },
    { href: `${base}/pedigree`, label: 'Pedigree', icon: 'pedigree', isOnPhone: false },
    { href: `${base}/rules`, label: 'Rules', icon: 'rules', isOnPhone: false },
    { href: `${base}/people`, label: 'People', icon: 'people', isOnPhone: false },
    { href: `${base}/settings`, label: 'Settings', icon: 'settings', isOnPhone: false },
    { href: `${base}/more`, label: 'More', icon: 'more', isOnPhone: true },
  ]
}

export function RoomNav({ roomId, room }: { roomId: string; room: Room | undefined }) {
  const pathname = usePathname()
  const places = placesOf(roomId)
  const isHere = (place: Place) =>
    pathname.startsWith(place.href) ||
    (place.icon === 'food' && pathname.startsWith(`/rooms/${roomId}/who-eats`)) ||
    (place.icon === 'room' && /\/(cultures|tanks|pairs|clutches|batches|groups|add)(\/|$)/.test(pathname))
  const isUnderMore = places.some((place) => !place.isOnPhone && isHere(place))
  return (
    <nav className={styles.nav} aria-label="Room">
      <div className={styles.navStay}>
        <div className={styles.roomName}>
          <span className={styles.mark} aria-hidden="true" />
          <span>
            <strong>{room?.name ?? ' '}</strong>
            <small>{room ? roleLabels[room.myRole] : ' '}</small>
          </span>
        </div>
        <ul className={styles.places}>
          {places.map((place) => (
            <li key={place.href} data-phone={place.isOnPhone || undefined} data-icon={place.icon}>
              <Link
                href={place.href}
                className={styles.place}
                aria-current={isHere(place) ? 'page' : undefined}
                data-under={place.icon === 'more' && isUnderMore ? '' : undefined}
              >
                <NavIcon name={place.icon} />
                <span>{place.label}</span>
              </Link>
            </li>
          ))}
        </ul>
      </div>
    </nav>
  )
}
