'use client'

import { type Station, stations, type TankKind } from '@fryward/shared'
import { type UseQueryResult, useQueries } from '@tanstack/react-query'
import Link from 'next/link'
import { todayIn } from '@/dates/local-time.ts'
import { sayNight } from '@/dates/say.ts'
import { useMay, useRoom } from '@/features/rooms/room-context.tsx'
import { likeliestNight } from '@/glyphs/egg-colour.ts'
import { toQuantityText } from '@/quantities/Amount.tsx'
import { formatNumber } from '@/quantities/format-number.ts'
import { Bones } from '@/ui/Bones.tsx'
import { LinkButton } from '@/ui/Button.tsx'
import { Loaded } from '@/ui/Loaded.tsx'
import { Notice } from '@/ui/Notice.tsx'
import { Page, Section } from '@/ui/Page.tsx'
import { clutchStateLabels, cultureKindLabels, stationLabels, tankKindLabels } from '@/words/labels.ts'
import { hrefOf } from './href.ts'
import {
  batchesOptions,
  clutchesOptions,
  culturesOptions,
  groupsOptions,
  pairsOptions,
  tanksOptions,
} from './queries.ts'
import { sayDensity } from './say-density.ts'
import type { Thing } from './use-things.ts'
import { VesselGlyph } from './VesselGlyph.tsx'
import styles from './vessels.module.css'

type Card = { thing: Thing; figure?: string | undefined; note: string }
type Stop = { station: Station; cards: Card[] }

const stationOfTank: Record<TankKind, Station> = {
  broodstock: 'broodstock',
  larval: 'larvae',
  grow_out: 'juveniles',
  quarantine: 'quarantine',
  storage: 'room',
}

/** The stations in walking order with what lives at each. */
export function RoomPage() {
  const room = useRoom()
  const may = useMay('manage')
  const { query, stops } = useStops()
  return (
    <Page
      title={room.name}
      lead={`Light from ${room.lightsOnAt} to ${room.lightsOffAt}`}
      aside={
        may && (
          <LinkButton href={`/rooms/${room.id}/add`} variant="default">
            Add something
          </LinkButton>
        )
      }
    >
      <Loaded query={query} skeleton={<Bones heights={[2, 5, 5, 2, 5, 5]} />} what="The room">
        {() =>
          stops.length === 0 ? (
            <Notice title="Nothing lives here yet">
              <p>Start with a culture: without live food there is nothing to feed larvae from.</p>
            </Notice>
          ) : (
            stops.map((stop) => (
              <Section key={stop.station} title={stationLabels[stop.station]}>
                <ul className={styles.shelf}>
                  {stop.cards.map((card) => (
                    <ThingCard key={card.thing.id} card={card} />
                  ))}
                </ul>
              </Section>
            ))
          )
        }
      </Loaded>
    </Page>
  )
}

function ThingCard({ card }: { card: Card }) {
  const href = hrefOf(useRoom().id, card.thing)
  return (
    <li>
      <Link className={styles.thing} href={href ?? '#'} prefetch={false}>
        <VesselGlyph kind={card.thing.kind} id={card.thing.id} size={56} />
        <span>
          <strong>{card.thing.name}</strong>
          {card.figure && <span className={styles.figure}>{card.figure}</span>}
          <small>{card.note}</small>
        </span>
      </Link>
    </li>
  )
}

function useStops() {
  const room = useRoom()
  const today = todayIn(room.timeZone)
  const [tanks, cultures, pairs, clutches, batches, groups] = useQueries({
    queries: [
      tanksOptions(room.id),
      culturesOptions(room.id),
      pairsOptions(room.id),
      clutchesOptions(room.id),
      batchesOptions(room.id),
      groupsOptions(room.id),
    ],
  })
  const all: UseQueryResult<unknown>[] = [tanks, cultures, pairs, clutches, batches, groups]
  const query = all.find((one) => one.data === undefined) ?? all[0]
  const litres = (volumeL: number) => toQuantityText({ value: volumeL, unit: 'L' }, room.units)
  const cards: { station: Station; card: Card }[] = [
    ...live(cultures.data).map((one) => ({
      station: one.kind === 'microalgae' ? ('microalgae' as const) : ('live_food' as const),
      card: {
        thing: { id: one.id, kind: 'culture' as const, name: one.name },
        figure: one.kind === 'rotifer' || one.densityNow ? sayDensity(one, room.timeZone) : undefined,
        note: [cultureKindLabels[one.kind], one.strain, litres(one.volumeL), one.isBackup ? 'backup' : '']
          .filter(Boolean)
          .join(', '),
      },
    })),
    ...live(batches.data).map((one) => ({
      station: 'larvae' as const,
      card: {
        thing: { id: one.id, kind: 'larval_batch' as const, name: one.name },
        note: `day ${one.ageDays}${one.numberNow ? `, about ${formatNumber(one.numberNow.estimate)}` : ''}`,
      },
    })),
    ...live(groups.data).map((one) => ({
      station: 'juveniles' as const,
      card: {
        thing: { id: one.id, kind: 'juvenile_group' as const, name: one.name },
        note: `day ${one.ageDays}${one.numberNow === null ? '' : `, ${one.numberNow} fish`}`,
      },
    })),
    ...live(pairs.data).map((one) => ({
      station: 'broodstock' as const,
      card: {
        thing: { id: one.id, kind: 'pair' as const, name: one.name },
        note: one.isResting ? 'resting' : one.nestSite || 'pair',
      },
    })),
    ...(clutches.data ?? [])
      .filter((one) => one.state === 'incubating')
      .map((one) => {
        const night = likeliestNight(one)
        return {
          station: 'broodstock' as const,
          card: {
            thing: { id: one.id, kind: 'clutch' as const, name: one.name },
            note: night
              ? `day ${Math.floor(one.ageDays)}, likely ${sayNight(night.date, today)} (${Math.round(night.probability * 100)} %)`
              : clutchStateLabels[one.state],
          },
        }
      }),
    ...live(tanks.data).map((one) => ({
      station: stationOfTank[one.kind],
      card: {
        thing: { id: one.id, kind: 'tank' as const, name: one.name },
        note: `${tankKindLabels[one.kind]}, ${litres(one.volumeL)}`,
      },
    })),
  ]
  return { query: query ?? tanks, stops: toStops(cards) }
}

const live = <T extends { endedAt: string | null }>(things: T[] | undefined) =>
  (things ?? []).filter((one) => one.endedAt === null)

const toStops = (cards: { station: Station; card: Card }[]): Stop[] =>
  stations
    .map((station) => ({ station, cards: cards.filter((one) => one.station === station).map((one) => one.card) }))
    .filter((stop) => stop.cards.length > 0)
