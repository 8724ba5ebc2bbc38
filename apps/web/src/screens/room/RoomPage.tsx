'use client'

import { sayPlainTime, stationLabels } from '@fryward/words'

import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { LinkButton } from '@/base/ui/Button.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Page, Section } from '@/base/ui/Page.tsx'
import { hrefOf } from '@/parts/things/href.ts'
import vessels from '@/parts/things/things.module.css'
import type { Thing } from '@/parts/things/use-things.ts'
import { VesselGlyph } from '@/parts/things/VesselGlyph.tsx'
import styles from './room.module.css'
import type { RoomCard } from './room-stops.ts'
import { useRoomStops } from './use-room-stops.ts'

/** The stations in walking order with what stands at each, and in each tank those who live in it. */
export function RoomPage() {
  const room = useRoom()
  const may = useMay('manage')
  const { query, stops } = useRoomStops()
  return (
    <div className={vessels.wide}>
      <Page
        title={room.name}
        lead={
          <>
            Light from {sayPlainTime(room.lightsOnAt, room)} to {sayPlainTime(room.lightsOffAt, room)}.{' '}
            <Link className={styles.eats} href={`/rooms/${room.id}/who-eats`}>
              Who eats from what
            </Link>
          </>
        }
        aside={
          may && (
            <LinkButton href={`/rooms/${room.id}/add`} variant="default">
              Add something
            </LinkButton>
          )
        }
      >
        <Loaded query={query} skeleton={<RoomBones />} what="The room">
          {() =>
            stops.length === 0 ? (
              <EmptyRoom />
            ) : (
              stops.map((stop) => (
                <Section key={stop.station} title={stationLabels[stop.station]}>
                  <ul className={styles.shelf}>
                    {stop.cards.map((card) => (
                      <VesselCard key={card.thing.id} card={card} />
                    ))}
                  </ul>
                </Section>
              ))
            )
          }
        </Loaded>
      </Page>
    </div>
  )
}

function EmptyRoom() {
  const room = useRoom()
  const may = useMay('manage')
  if (!may)
    return (
      <Notice title="Nothing lives here yet">
        <p>Whoever looks after this room adds its cultures and tanks; they show up here.</p>
      </Notice>
    )
  return (
    <Notice title="Nothing lives here yet">
      <p>Start with a culture: without live food there is nothing to feed larvae from. Then a tank for the pair.</p>
      <div className={vessels.actions}>
        <LinkButton href={`/rooms/${room.id}/add?what=culture`} variant="filled">
          Start a culture
        </LinkButton>
        <LinkButton href={`/rooms/${room.id}/add?what=tank`} variant="default">
          Add a tank
        </LinkButton>
      </div>
    </Notice>
  )
}

function VesselCard({ card }: { card: RoomCard }) {
  const { inhabitants } = card
  return (
    <li className={styles.card}>
      <ThingLink thing={card.thing} note={card.note} figure={card.figure} open={card.open} size={56} />
      {inhabitants && inhabitants.length > 0 && (
        <ul className={styles.inhabitants}>
          {inhabitants.map((one) => (
            <li key={one.thing.id}>
              <ThingLink thing={one.thing} note={one.note} open={one.open} size={36} />
            </li>
          ))}
        </ul>
      )}
      {inhabitants?.length === 0 && <p className={styles.empty}>empty</p>}
    </li>
  )
}

type LinkProps = { thing: Thing; note: string; figure?: string | undefined; open: number; size: number }

function ThingLink({ thing, note, figure, open, size }: LinkProps) {
  return (
    <Link className={styles.thing} href={hrefOf(useRoom().id, thing) ?? '#'}>
      <VesselGlyph kind={thing.kind} id={thing.id} size={size} />
      <span className={styles.words}>
        <span className={styles.head}>
          <strong>{thing.name}</strong>
          {open > 0 && <span className={styles.open}>{open} to do</span>}
        </span>
        {figure && <span className={styles.figure}>{figure}</span>}
        <small>{note}</small>
      </span>
    </Link>
  )
}

/** Two stations of the shape that most have. */
const RoomBones = () => (
  <>
    <Bones heights={[1.6]} />
    <div className={styles.shelf} aria-hidden="true">
      {[0, 1, 2].map((i) => (
        <div key={i} className={styles.ghost} />
      ))}
    </div>
    <div className={styles.shelf} aria-hidden="true">
      {[0, 1, 2].map((i) => (
        <div key={i} className={styles.ghost} data-tall />
      ))}
    </div>
  </>
)
