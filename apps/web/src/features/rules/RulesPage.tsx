'use client'

import { type Rule, stations } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { useMay, useRoom } from '@/features/rooms/room-context.tsx'
import { Bones } from '@/ui/Bones.tsx'
import { Loaded } from '@/ui/Loaded.tsx'
import { Notice } from '@/ui/Notice.tsx'
import { Page, Section } from '@/ui/Page.tsx'
import { stationLabels } from '@/words/labels.ts'
import { rulesOptions } from './queries.ts'
import { RuleCard } from './RuleCard.tsx'

/** The husbandry of this room as sentences; the numbers in them are its own. */
export function RulesPage() {
  const room = useRoom()
  const may = useMay('manage')
  const rules = useQuery(rulesOptions(room.id))
  return (
    <Page title="Rules" lead="What asks for each task, with its numbers and where they come from">
      {!may && <Notice>You can read the rules here; changing them is for caretakers and the owner.</Notice>}
      <Loaded query={rules} skeleton={<Bones heights={[2, 8, 8, 8]} />} what="The rules">
        {(data) =>
          data.length === 0 ? (
            <Notice>There is no rule yet.</Notice>
          ) : (
            stations.map((station) => {
              const own = data.filter((rule) => rule.station === station)
              return (
                own.length > 0 && (
                  <Section key={station} title={stationLabels[station]}>
                    {own.map((rule: Rule) => (
                      <RuleCard key={`${rule.id} ${rule.version}`} rule={rule} />
                    ))}
                  </Section>
                )
              )
            })
          )
        }
      </Loaded>
    </Page>
  )
}
