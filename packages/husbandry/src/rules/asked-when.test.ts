import { describe, expect, test } from 'vitest'
import { broodstockForms } from '../testing/forms/broodstock-forms.ts'
import { cultureForms } from '../testing/forms/culture-forms.ts'
import type { Form } from '../testing/forms/form.ts'
import { formDate } from '../testing/forms/form-rooms.ts'
import { larvaeForms } from '../testing/forms/larvae-forms.ts'
import { tankForms } from '../testing/forms/tank-forms.ts'
import { onlyDraft } from '../testing/snapshot-builder.ts'
import { findRule } from './index.ts'

const forms: readonly Form[] = [...broodstockForms, ...larvaeForms, ...cultureForms, ...tankForms]

/**
 * In a room whose rounds are at 07:00, 12:30 and 18:30: what kind of work a rule asks for, in which round, and how many minutes
 * after that it is late; two hours where nothing hurries. What a stand-in is not asked is said, and why.
 */
type Row = readonly [rule: string, verb: string, round: string, lateMinutes: number, why: string]

const anybody: readonly Row[] = [
  ['clutch-look', 'look', 'morning', 120, 'colour is judged before the day’s work'],
  ['clutch-morning-after', 'look', 'morning', 60, 'what hatched starves while nobody looks'],
  ['clutch-second-night', 'look', 'morning', 120, 'they join others that are fed already'],
  ['clutch-pull-nest', 'pull', 'midday', 120, 'an afternoon before dark at 19:00'],
  ['clutch-watch', 'look', 'evening', 180, 'from lights off, as long as they hatch'],
  ['pair-feed', 'feed', 'morning', 120, 'with the lights'],
  ['pair-look-for-eggs', 'look', 'midday', 120, 'clownfish lay from morning to afternoon'],
  ['pair-watch-new', 'look', 'evening', 120, 'after a day together'],
  ['larval-ammonia-test', 'test', 'morning', 120, 'before feeds and changes'],
  ['larval-ammonia-act', 'change_water', 'morning', 60, 'it poisons'],
  ['larval-siphon', 'siphon', 'midday', 120, 'after the feeds of the morning'],
  ['larval-water-change', 'change_water', 'midday', 120, 'after the feeds of the morning'],
  ['larval-look', 'look', 'midday', 120, 'bellies are full by then, or should be'],
  ['larval-prey-count', 'count', 'morning', 60, 'the feed waits for it'],
  ['larval-prey-top-up', 'feed', 'morning', 60, 'larvae starve within hours'],
  ['larval-chilled-feed', 'feed', 'morning', 120, 'beside the other feeds'],
  ['larval-artemia-feed', 'feed', 'morning', 60, 'with the lights, and they starve within hours'],
  ['larval-wean', 'feed', 'morning', 120, 'while they are hungry'],
  ['larval-green-water', 'feed', 'morning', 120, 'with the lights'],
  ['larval-head-count', 'count', 'midday', 120, 'takes time'],
  ['larval-none-left', 'look', 'morning', 120, 'first thing'],
  ['larval-move', 'move', 'midday', 120, 'with half a day to settle in'],
  ['microalgae-look', 'look', 'morning', 120, 'the cleanest first'],
  ['microalgae-split', 'refill', 'morning', 120, 'the cleanest first'],
  ['copepod-count', 'count', 'morning', 120, 'before harvest and feed'],
  ['copepod-harvest', 'harvest', 'morning', 120, 'after the count'],
  ['copepod-feed', 'feed', 'morning', 120, 'after the harvest'],
  ['copepod-siphon', 'siphon', 'midday', 120, 'after what cannot wait'],
  ['copepod-trouble', 'look', 'morning', 60, 'a culture dies in hours'],
  ['rotifer-count', 'count', 'morning', 120, 'before harvest and feed'],
  ['rotifer-recount', 'count', 'morning', 60, 'a culture dies in hours'],
  ['culture-water-test', 'test', 'midday', 120, 'after what cannot wait'],
  ['rotifer-harvest', 'harvest', 'morning', 120, 'after the count'],
  ['rotifer-refill', 'refill', 'morning', 120, 'after the harvest'],
  ['rotifer-feed', 'feed', 'morning', 120, 'after the harvest'],
  ['rotifer-restart', 'restart', 'midday', 120, 'takes time'],
  ['rotifer-trouble', 'look', 'morning', 60, 'a culture dies in hours'],
  ['rotifer-rescue', 'restart', 'morning', 60, 'a culture dies in hours'],
  ['rotifer-empty', 'check', 'morning', 120, 'first thing'],
  ['artemia-harvest', 'harvest', 'midday', 90, 'they live on their yolk, and lose it by the hour'],
  ['artemia-start', 'start', 'evening', 120, 'so many hours before they are to be out'],
  ['juvenile-feed', 'feed', 'morning', 120, 'with the lights'],
  ['juvenile-count', 'count', 'midday', 120, 'takes time'],
  ['quarantine-arrival', 'check', 'evening', 120, 'last of all: nobody goes from there to others'],
  ['quarantine-acclimatise', 'move', 'morning', 30, 'a closed bag fouls, whenever it came'],
  ['quarantine-watch', 'look', 'evening', 120, 'last of all: nobody goes from there to others'],
  ['tank-top-up', 'top_up', 'midday', 120, 'after what cannot wait'],
  ['tank-water-test', 'test', 'midday', 120, 'after what cannot wait'],
  ['tank-water-change', 'change_water', 'midday', 120, 'after what cannot wait'],
  ['tank-water-act', 'change_water', 'morning', 60, 'it poisons'],
  ['tank-oxygen', 'look', 'morning', 60, 'fish suffocate within hours'],
  ['room-equipment', 'check', 'morning', 120, 'before anything is done with it'],
  ['room-battery-air', 'test', 'midday', 120, 'with time to mend it by day'],
  ['room-water-to-mix', 'mix', 'evening', 120, 'stirs until the morning'],
]

const keepers: readonly Row[] = [
  ['clutch-decide', 'decide', 'midday', 120, 'what a room takes on for two months'],
  ['food-keep-larvae', 'decide', 'morning', 120, 'whom to part with'],
  ['rotifer-backup-wanted', 'start', 'midday', 120, 'one more culture to keep'],
  ['food-start-culture', 'start', 'midday', 120, 'one more culture to keep'],
  ['food-buy-in', 'check', 'morning', 120, 'costs money'],
  ['artemia-lot-test', 'test', 'midday', 120, 'can wait for whoever keeps the room'],
  ['artemia-decapsulate', 'start', 'evening', 120, 'bleach and heat'],
  ['juvenile-place', 'look', 'midday', 120, 'whom to give fish to'],
  ['quarantine-end', 'decide', 'midday', 120, 'risks every other tank'],
]

function when(id: string) {
  const form = forms.find(({ rule }) => rule === id)
  const rule = findRule(id)
  if (!form || !rule) throw new Error(`No room asks for ${id}`)
  const [draft] = form.ask().drafts(form.on ?? formDate, [rule]).drafts
  const { content, roundId, dueAt, lateAt, isForStandIn } = onlyDraft({ drafts: draft ? [draft] : [], gaps: [] })
  return { asked: [content.verb, roundId, (Date.parse(lateAt) - Date.parse(dueAt)) / 60_000], isForStandIn }
}

describe('what is asked of anybody', () => {
  test.each(anybody)('%s: to %s, in the %s, late after %d minutes: %s', (rule, ...row) => {
    expect(when(rule)).toEqual({ asked: row.slice(0, 3), isForStandIn: true })
  })
})

describe('what a stand-in is not asked', () => {
  test.each(keepers)('%s: to %s, in the %s, late after %d minutes: %s', (rule, ...row) => {
    expect(when(rule)).toEqual({ asked: row.slice(0, 3), isForStandIn: false })
  })
})

test('every rule that has a form stands above', () => {
  const told = [...anybody, ...keepers].map(([rule]) => rule)
  expect(told.toSorted()).toEqual([...new Set(forms.map(({ rule }) => rule))].toSorted())
})
