import type { Because } from '@fryward/shared'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { computedLink } from '../../rule/why.ts'
import { clutchById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotClutch, SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { standingBatches } from '../../state/batch-state.ts'
import { lastCare } from '../../state/care.ts'
import { type ClutchOutlook, clutchOutlook } from '../../state/clutch-outlook.ts'
import { clutchIntent, clutchState } from '../../state/clutch-state.ts'
import { share } from '../../task/measures.ts'

/** The clutch with its forecast, while it is to be raised, in part or whole. */
export function toRaise(snapshot: RoomSnapshot, id: string, day: HusbandryDay) {
  const clutch = clutchById(snapshot, id)
  const intent = clutchIntent(snapshot, clutch)
  if (clutchState(snapshot, clutch) !== 'incubating' || intent === 'leave_with_parents') return null
  const outlook = clutchOutlook(snapshot, clutch, day)
  return { clutch, outlook, isDecided: intent !== 'undecided' }
}

/** Larval tanks without larvae, in order of name: where tonight's may go. */
export function freeLarvalTanks(snapshot: RoomSnapshot): SnapshotTank[] {
  return snapshot.tanks
    .filter((tank) => tank.kind === 'larval' && !standingBatches(snapshot).some(({ tankId }) => tankId === tank.id))
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
}

export function chanceLinks(outlook: ClutchOutlook): Because[] {
  return [
    ...outlook.because,
    computedLink('hatch forecast', null, {
      label: 'chance that it is tonight',
      quantity: share(Number(outlook.tonight.toFixed(2))),
    }),
  ]
}

export const mayBe = (clutch: SnapshotClutch) => (clutch.care === 'nest' ? 'may hatch' : 'may be released')
export const eventOf = (clutch: SnapshotClutch) => (clutch.care === 'nest' ? 'hatching' : 'release')

/** Nights on which eggs stand in a larval tank: pulled and neither hatched out nor brought back. */
export function isNestPulled(snapshot: RoomSnapshot, clutch: SnapshotClutch, day: HusbandryDay): boolean {
  const pulled = lastCare(snapshot, 'pull_nest', { subjectId: clutch.id, day })
  const back = lastCare(snapshot, 'move_nest_back', { subjectId: clutch.id, day })
  return pulled !== undefined && (!back || back.at < pulled.at)
}
