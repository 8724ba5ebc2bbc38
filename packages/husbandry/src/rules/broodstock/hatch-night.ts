import type { Because, PlainDate } from '@fryward/shared'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { computedLink } from '../../rule/why.ts'
import type { RoomSnapshot, SnapshotClutch } from '../../snapshot/room-snapshot.ts'
import { isBrooder } from '../../species/index.ts'
import { lastCare } from '../../state/care.ts'
import { type ClutchOutlook, chanceOfNights } from '../../state/clutch-outlook.ts'
import { share } from '../../task/measures.ts'

export const chanceLinks = (outlook: ClutchOutlook): Because[] => [...outlook.because, tonightLink(outlook)]

const forecastOf = ({ species }: ClutchOutlook): string =>
  isBrooder(species.care.value) ? 'release forecast' : 'hatch forecast'

/** Once nights have passed it is another number than the one that the pages tell of the same night. */
export const tonightLink = (outlook: ClutchOutlook): Because =>
  computedLink(forecastOf(outlook), null, {
    label: outlook.mayHaveHatched ? 'chance that it is tonight, if it was not before' : 'chance that it is tonight',
    quantity: share(Number(outlook.tonight.toFixed(2))),
  })

/** What a task goes by that looks days ahead. */
export const nightsLink = (outlook: ClutchOutlook, nights: { from: PlainDate; to: PlainDate }): Because =>
  computedLink(forecastOf(outlook), null, {
    label: nights.to === nights.from ? `chance of ${nights.to}` : `chance of ${nights.from} to ${nights.to}, together`,
    quantity: share(Number(chanceOfNights(outlook, nights).toFixed(2))),
  })

export const mayBe = (clutch: SnapshotClutch) => (isBrooder(clutch.care) ? 'may be released' : 'may hatch')
export const eventOf = (clutch: SnapshotClutch) => (isBrooder(clutch.care) ? 'release' : 'hatching')

/** Nights on which eggs stand in a larval tank: pulled and neither hatched out nor brought back. */
export function isNestPulled(snapshot: RoomSnapshot, clutch: SnapshotClutch, day: HusbandryDay): boolean {
  const pulled = lastCare(snapshot, 'pull_nest', { subjectId: clutch.id, day })
  const back = lastCare(snapshot, 'move_nest_back', { subjectId: clutch.id, day })
  return pulled !== undefined && (!back || back.at < pulled.at)
}
