'use client'

import { addressOf } from '@fryward/shared'
import { useMutation, useQuery } from '@tanstack/react-query'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Page, Section } from '@/base/ui/Page.tsx'
import { SignInAgain } from '@/parts/again/SignInAgain.tsx'
import { askWhetherItIsMe, sureItIsMe } from '@/parts/again/sign-in-again.ts'
import { meOptions } from '@/parts/session/me.ts'
import { SignOutButton } from '@/parts/session/SignOutButton.tsx'
import { NavIcon, type NavIconName } from '@/parts/shell/nav-icons.tsx'
import { LookChoice } from './LookChoice.tsx'
import styles from './more.module.css'

const places: { path: string; label: string; icon: NavIconName }[] = [
  { path: 'food', label: 'Food ahead', icon: 'food' },
  { path: 'who-eats', label: 'Who eats from what', icon: 'food' },
  { path: 'survival', label: 'Survival, clutch by clutch', icon: 'survival' },
  { path: 'pedigree', label: 'Pedigree', icon: 'pedigree' },
  { path: 'devices', label: 'Devices and gauges', icon: 'gauge' },
  { path: 'alarms', label: 'Alarms and who is told', icon: 'gauge' },
  { path: 'rules', label: 'Rules', icon: 'rules' },
  { path: 'people', label: 'People and invitations', icon: 'people' },
  { path: 'settings', label: 'Room settings', icon: 'settings' },
  { path: 'records', label: 'Records in and out', icon: 'rules' },
  { path: 'add', label: 'Add a tank, culture, pair', icon: 'add' },
]

/** Whoever claimed the server can take all of it home. An address that the browser goes to: it shows how far it is. */
function Backup() {
  const fetchIt = useMutation({
    mutationFn: () => sureItIsMe(askWhetherItIsMe),
    onSuccess: () => window.location.assign(addressOf('downloadBackup')),
  })
  return (
    <Section title="Backup">
      <p>
        One file with everything on this server: every room with its whole history, its people, and the photos. Keep it
        where nobody else reads it; <code>npm run restore</code> puts it into an empty server.
      </p>
      <FormProblem error={fetchIt.error} />
      <div>
        <Button isBusy={fetchIt.isPending} onClick={() => fetchIt.mutate()}>
          Download a backup
        </Button>
      </div>
      <SignInAgain />
    </Section>
  )
}

export function MorePage() {
  const room = useRoom()
  const me = useQuery(meOptions())
  return (
    <Page title="More">
      <ul className={styles.places}>
        {places.map((place) => (
          <li key={place.path}>
            <Link className={styles.place} href={`/rooms/${room.id}/${place.path}`}>
              <NavIcon name={place.icon} />
              {place.label}
            </Link>
          </li>
        ))}
      </ul>
      {me.data?.ownsServer && <Backup />}
      <Section title="Look">
        <LookChoice />
      </Section>
      <Section title="You">
        <div className={styles.you}>
          <Link className={styles.textLink} href={`/rooms/${room.id}/account`}>
            Your account
          </Link>
          <Link className={styles.textLink} href="/rooms?choose=1">
            Another room
          </Link>
          {me.data && <SignOutButton name={me.data.user.name} />}
        </div>
      </Section>
    </Page>
  )
}
