'use client'

import type { ComparedGroup, SurvivalComparison } from '@fryward/shared'
import { sayGroup, sayNumber, sayShare, sayWhole } from '@fryward/words'
import charts from '@/base/charts/charts.module.css'
import { useVoice } from '@/base/room/room-context.tsx'
import { letterOf } from './curves-lanes.ts'
import styles from './survival.module.css'

/** The groups in figures: the letters of the chart with their names, and what the curves come to, first on a narrow phone. */
export function GroupTable({ compared, drawn }: { compared: SurvivalComparison; drawn: readonly ComparedGroup[] }) {
  const voice = useVoice()
  const others = compared.groups.filter((group) => !drawn.includes(group))
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable by keyboard
    <section className={`${charts.scroll} ${styles.figures}`} tabIndex={0} aria-label="The groups in figures">
      <table className={charts.table}>
        <thead>
          <tr>
            <th scope="col">Group</th>
            <th scope="col">Alive at the end</th>
            <th scope="col">Clutches</th>
            <th scope="col">Young</th>
            <th scope="col">Died</th>
            <th scope="col">Half had died by</th>
          </tr>
        </thead>
        <tbody>
          {[...drawn, ...others].map((group, index) => (
            <tr key={group.key}>
              <th scope="row">
                {index < drawn.length && `${letterOf(index)}: `}
                {sayGroup(group, compared.by)}
              </th>
              <td>{sayEnd(group, voice)}</td>
              <td>{sayWhole(group.clutches, voice)}</td>
              <td>{sayWhole(group.animals, voice)}</td>
              <td>{sayWhole(group.deaths, voice)}</td>
              <td>{group.medianDays === null ? 'not reached' : `day ${sayNumber(group.medianDays, voice)}`}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

function sayEnd({ curve, followedToDay, animals }: ComparedGroup, voice: ReturnType<typeof useVoice>): string {
  const last = curve.at(-1)
  const day = `day ${sayNumber(followedToDay, voice)}`
  return last ? `${sayShare({ ...last, of: animals }, voice)} on ${day}` : `all on ${day}`
}
