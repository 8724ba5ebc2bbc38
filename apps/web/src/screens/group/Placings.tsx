'use client'

import type { Fact, JuvenileGroup } from '@fryward/shared'
import { sayDate, sayFact, toPlainDate } from '@fryward/words'
import { useInfiniteQuery, useQuery } from '@tanstack/react-query'
import { useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { factsOptions } from '@/parts/facts/queries.ts'
import { speciesOptions } from '@/parts/species/queries.ts'
import styles from '@/parts/things/things.module.css'

const kinds = ['outcome'] as const

/** Where the fish of a group went, newest first, and what to see to before the next go. */
export function Placings({ group }: { group: JuvenileGroup }) {
  const room = useRoom()
  const pages = useInfiniteQuery(factsOptions(room.id, group.id, kinds))
  return (
    <Section title="Placing">
      {group.endedAt === null && <BeforePlacing group={group} />}
      <Loaded query={pages} skeleton={<Bones heights={[3]} />} what="The list of placings">
        {(data) => {
          const gone = data.pages.flatMap((page) => page.facts).filter(({ struckAt }) => struckAt === null)
          return gone.length === 0 ? (
            <Notice>None has gone yet. When some do, record them below as placed, kept or culled.</Notice>
          ) : (
            <ul className={styles.links}>
              {gone.map((fact) => (
                <Gone key={fact.id} fact={fact} />
              ))}
            </ul>
          )
        }}
      </Loaded>
    </Section>
  )
}

function Gone({ fact }: { fact: Fact }) {
  const room = useRoom()
  return (
    <li>
      <span>{sayFact(fact, { voice: room, nameOf: () => undefined }).main}</span>
      <span className={styles.soft}>{sayDate(toPlainDate(fact.at, room.timeZone), room)}</span>
    </li>
  )
}

function BeforePlacing({ group }: { group: JuvenileGroup }) {
  const species = useQuery(speciesOptions()).data ?? []
  const permitNote = species.find((one) => one.id === group.species)?.permitNote
  return (
    <Notice title="Before they go">
      <p>
        They eat dry or frozen food, nothing is wrong with them, and they go unfed for a day, so that the water of the
        bag stays clean. Never into the wild, fish or water; local rules and your veterinarian come first.
      </p>
      {permitNote && <p>{permitNote}</p>}
    </Notice>
  )
}
