'use client'

import { type Rule, type Station, stations } from '@fryward/shared'
import { stationLabels } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useDeferredValue, useState } from 'react'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { Page, Section } from '@/base/ui/Page.tsx'
import { useHashTarget } from '@/base/ui/use-hash-target.ts'
import { rulesOptions } from '@/parts/rules/queries.ts'
import { RuleCard } from '@/parts/rules/RuleCard.tsx'
import styles from '@/parts/rules/rules.module.css'
import things from '@/parts/things/things.module.css'
import { findRules } from './find-rules.ts'

/** The husbandry of this room as sentences; the numbers in them are its own. */
export function RulesPage() {
  const room = useRoom()
  const may = useMay('manage')
  const rules = useQuery(rulesOptions(room.id))
  return (
    <div className={things.wide}>
      <Page title="Rules" lead="What asks for each task, with its numbers and where they come from">
        {!may && <Notice>You can read the rules here; changing them is for caretakers and the owner.</Notice>}
        <Loaded query={rules} skeleton={<Bones heights={[4.4, 3, 2, 11, 11, 11]} />} what="The rules">
          {(data) => (data.length === 0 ? <Notice>There is no rule yet.</Notice> : <RuleList rules={data} />)}
        </Loaded>
      </Page>
    </div>
  )
}

function RuleList({ rules }: { rules: Rule[] }) {
  const [words, setWords] = useState('')
  const found = findRules(rules, useDeferredValue(words))
  const targetId = useHashTarget((id) => rules.some((rule) => rule.id === id))
  const stops = stations
    .map((station) => ({ station, rules: found.filter((rule) => rule.station === station) }))
    .filter((stop) => stop.rules.length > 0)
  return (
    <>
      <label className={styles.search}>
        Find a rule
        <input
          type="search"
          value={words}
          autoComplete="off"
          onChange={(event) => setWords(event.currentTarget.value)}
        />
      </label>
      <p role="status" className={styles.found}>
        {words.trim() === ''
          ? `${rules.length} rules, ${rules.filter((rule) => rule.isOn).length} on`
          : `${found.length} of ${rules.length} rules`}
      </p>
      {stops.length > 1 && <Jumps stations={stops.map((stop) => stop.station)} />}
      {stops.length === 0 && (
        <Notice title="No rule says that">
          <p>Try one word of what it does: feed, count, water, eggs.</p>
          <Button onClick={() => setWords('')}>Show all rules</Button>
        </Notice>
      )}
      {stops.map((stop) => (
        <div key={stop.station} id={`at-${stop.station}`} className={styles.stop}>
          <Section title={stationLabels[stop.station]}>
            <div className={styles.cards}>
              {stop.rules.map((rule) => (
                <RuleCard key={`${rule.id} ${rule.version}`} rule={rule} isTarget={rule.id === targetId} />
              ))}
            </div>
          </Section>
        </div>
      ))}
    </>
  )
}

function Jumps({ stations: stops }: { stations: Station[] }) {
  return (
    <nav aria-label="Stations">
      <ul className={styles.jumps}>
        {stops.map((station) => (
          <li key={station}>
            <a href={`#at-${station}`}>{stationLabels[station]}</a>
          </li>
        ))}
      </ul>
    </nav>
  )
}
