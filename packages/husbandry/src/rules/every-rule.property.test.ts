import type { Because, Unit } from '@fryward/shared'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { husbandryDay } from '../calendar/husbandry-day.ts'
import { draftDay } from '../engine/draft-day.ts'
import { reconcile } from '../engine/reconcile.ts'
import { parseTaskKey } from '../engine/task-key.ts'
import { cultureSupply } from '../plans/culture-supply.ts'
import { sourceText } from '../rule/parameters.ts'
import { clutchIntent } from '../state/clutch-state.ts'
import { randomRoom } from '../testing/random-room.ts'
import { saidTitle } from '../testing/said-title.ts'
import type { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { wholeDrafts } from '../testing/whole-draft.ts'
import { rules } from './index.ts'

const date = '2026-03-10'
const seeds = fc.integer({ min: 1, max: 1_000_000 })
const bounded = { numRuns: 60 } as const
const allOn = (room: SnapshotBuilder): SnapshotBuilder => {
  for (const rule of rules) if (!rule.isOnByDefault) room.setting(rule.id, { isOn: true })
  return room
}
const day = (room: SnapshotBuilder) => draftDay({ snapshot: room.build(), date, rules })
// As the screen may write a unit behind its number, in either system.
const volume = /\b(mL|L|litres?|gal|gallons?|qt|quarts?)\b/
const unitWords: Record<Unit, RegExp> = {
  mL: volume,
  L: volume,
  g: /\b(g|kg|grams?|lb|pounds?)\b/,
  per_mL: /\bper mL\b/,
  per_L: /\b(per L|litre)\b/,
  animals: /\b(animals|nauplii|rotifers|fish)\b/,
  eggs: /\beggs\b/,
  cells: /\bcells\b/,
  cells_per_mL: /\b(cells|per mL)\b/,
  cells_per_rotifer_per_day: /\b(cells|rotifer|a day)\b/,
  degC: /°|\bdegrees?\b/,
  psu: /\bpsu\b/,
  mg_per_L: /\bmg\b/,
  pH: /\bpH\b/,
  mV: /\bmV\b/,
  cm: /\bcm\b/,
  lux: /\blux\b/,
  minutes: /\b(min|minutes?)\b/,
  hours: /\b(h|hours?)\b/,
  days: /\bdays?\b/,
  per_day: /\b(a day|daily)\b/,
  share: /%|\bper ?cent\b/,
  times: /\btimes\b/,
  feeds: /\bfeeds\b/,
  samples: /\bsamples\b/,
  nights: /\bnights\b/,
  um: /\b(um|µm)\b/,
  mm: /\bmm\b/,
}
const originPresent = ({ origin }: Because) =>
  origin.kind === 'fact'
    ? origin.factId !== '' && origin.at !== '' && origin.byName !== ''
    : origin.kind === 'setting'
      ? origin.where !== ''
      : origin.kind === 'computed'
        ? origin.by !== ''
        : origin.kind === 'food_plan'
          ? origin.madeAt !== ''
          : origin.source !== ''

describe('a day of any room', () => {
  test('no rule throws, and the same room and day give the same drafts', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        expect(day(allOn(randomRoom(seed, date)))).toEqual(day(allOn(randomRoom(seed, date))))
      }),
      bounded,
    )
  })

  test('no two keys collide, and every key can be read back', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const keys = day(allOn(randomRoom(seed, date))).drafts.map(({ key }) => key)
        expect(new Set(keys).size).toBe(keys.length)
        for (const key of keys) expect(parseTaskKey(key).onDate).toBe(date)
      }),
      bounded,
    )
  })

  test('facts of one instant have no order', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const room = allOn(randomRoom(seed, date))
        const straight = draftDay({ snapshot: room.build(), date, rules })
        const snapshot = room.build()
        snapshot.facts = [...snapshot.facts].reverse().sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
        expect(draftDay({ snapshot, date, rules })).toEqual(straight)
      }),
      bounded,
    )
  })

  test('every amount has a unit, is not negative, and is not more than its vessel', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const room = allOn(randomRoom(seed, date))
        for (const { content, subjectId, ruleId } of day(room).drafts) {
          const quantities = [content.amount, ...content.steps.flatMap((step) => Object.values(step.quantities))]
          for (const quantity of quantities) {
            if (!quantity) continue
            expect(quantity.unit).toBeTruthy()
            expect(Number.isFinite(quantity.value), ruleId).toBe(true)
            expect(quantity.value, ruleId).toBeGreaterThanOrEqual(0)
          }
          expect(content.amount === null || content.amount.value > 0, `${ruleId} asks for nothing`).toBe(true)
          const vesselL = volumeOf(room, subjectId)
          if (content.amount?.unit === 'L' && vesselL !== null && ruleId !== 'rotifer-rescue')
            expect(content.amount.value, ruleId).toBeLessThanOrEqual(vesselL + 0.051)
        }
      }),
      bounded,
    )
  })

  test('every number that is shown in a sentence is there, every title is whole, and every link of "why" says where it was read', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        for (const { content, ruleId } of wholeDrafts(day(allOn(randomRoom(seed, date)))).drafts) {
          if (!('deed' in content.title)) throw new Error(`${ruleId} says its title as one sentence`)
          expect(saidTitle({ content }), ruleId).not.toMatch(/[{}]|undefined|^ | $| {2}|, *,/)
          for (const { text, quantities } of content.steps)
            for (const [, name] of text.matchAll(/\{(\w+)\}/g)) expect(Object.keys(quantities), ruleId).toContain(name)
          expect(content.because.length, ruleId).toBeGreaterThan(0)
          for (const link of content.because) expect(originPresent(link), `${ruleId}: ${link.label}`).toBe(true)
        }
      }),
      bounded,
    )
  })

  test('a link of "why" says its unit once, in litres or gallons, and names no function', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        for (const { content, ruleId } of day(allOn(randomRoom(seed, date))).drafts)
          for (const { label, quantity, origin } of content.because) {
            if (quantity) expect(label, ruleId).not.toMatch(unitWords[quantity.unit])
            if (origin.kind === 'computed') expect(origin.by, ruleId).not.toMatch(/live-feed|seawater|[a-z]{2}[A-Z]/)
          }
      }),
      bounded,
    )
  })

  test('a title names other vessels, never its own: the list has it as the heading above', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        for (const { content, ruleId, subjectName } of day(allOn(randomRoom(seed, date))).drafts)
          expect(` ${saidTitle({ content })} `, ruleId).not.toMatch(new RegExp(`\\W${subjectName}\\W`))
      }),
      bounded,
    )
  })

  test('a limit of a field is inside what it refuses, and its usual value inside its limits', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        for (const { content, ruleId } of day(allOn(randomRoom(seed, date))).drafts)
          for (const field of content.fields) {
            if (field.type !== 'number' && field.type !== 'count') continue
            expect(field.minimum, `${ruleId} ${field.name}`).toBeLessThanOrEqual(field.maximum)
            expect(field.likelyMinimum, `${ruleId} ${field.name}`).toBeLessThanOrEqual(field.likelyMaximum)
            if (field.type === 'count' || field.usual === null) continue
            expect(field.usual, `${ruleId} ${field.name}`).toBeGreaterThanOrEqual(field.minimum)
            expect(field.usual, `${ruleId} ${field.name}`).toBeLessThanOrEqual(field.maximum)
          }
      }),
      bounded,
    )
  })

  test('what depends on units stands apart from the words, and a usual value is one that somebody could type', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        for (const { content, ruleId } of day(allOn(randomRoom(seed, date))).drafts) {
          const helps = content.fields.flatMap(({ label, help }) => [label, help ?? ''])
          for (const text of [...content.steps.map((step) => step.text), ...content.cautions, ...helps])
            expect(text, ruleId).not.toMatch(/\d ?(°C|C|L)\b|\d\.\d{4}/)
          for (const field of content.fields)
            if (field.type === 'number' && field.usual !== null)
              expect(Number(field.usual.toPrecision(4)), `${ruleId} ${field.name}`).toBe(field.usual)
        }
      }),
      bounded,
    )
  })

  test('no culture is asked for more than it may give, whatever is begun from it', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const room = allOn(randomRoom(seed, date))
        // All rotifers but one were lost and cleaned out the day before.
        const [kept, ...lost] = room.snapshot.cultures.filter(({ kind }) => kind === 'rotifer')
        for (const culture of kept ? lost : []) {
          culture.strain = kept!.strain
          room.fact('care', culture.id, '2026-03-09T19:30:00.000Z', { act: 'restart_culture' })
        }
        if (kept) room.count(kept, `${date}T00:30:00.000Z`, [300, 300, 300])
        const starts = day(room).drafts.filter(({ ruleId }) => ['rotifer-rescue', 'rotifer-empty'].includes(ruleId))
        const snapshot = room.build()
        for (const culture of snapshot.cultures) {
          const asked = starts.filter(({ context }) => (context as { sourceId?: unknown }).sourceId === culture.id)
          const litres = asked.reduce((sum, { content }) => sum + (content.amount?.value ?? 0), 0)
          if (litres === 0) continue
          const { leftL } = cultureSupply(snapshot, culture, husbandryDay({ room: snapshot.room, date }))
          expect(litres, `${asked.length} from ${culture.name}`).toBeLessThanOrEqual(leftL + 1e-9)
        }
      }),
      bounded,
    )
  })

  test('striking out a fact gives what would have been without it', () => {
    fc.assert(
      fc.property(seeds, fc.nat(), (seed, which) => {
        const room = allOn(randomRoom(seed, date))
        const { facts } = room.snapshot
        if (facts.length === 0) return
        const struck = facts[which % facts.length]
        const never = allOn(randomRoom(seed, date))
        never.snapshot.facts = never.snapshot.facts.filter(({ id }) => id !== struck?.id)
        // Worked out once with the fact, so that nothing remembered may leak into the day without it.
        day(room)
        room.snapshot.facts = room.snapshot.facts.filter((fact) => fact !== struck)
        expect(day(room)).toEqual(day(never))
      }),
      bounded,
    )
  })

  test('striking out what was decided on a clutch gives back what was meant before', () => {
    const decided = { intent: 'leave_with_parents' } as const
    fc.assert(
      fc.property(seeds, fc.nat(), (seed, which) => {
        const room = allOn(randomRoom(seed, date))
        const before = day(room)
        const { clutches, facts } = room.snapshot
        const clutch = clutches[which % clutches.length]
        if (!clutch) return
        const decision = room.fact('decision', clutch.id, `${date}T00:00:00.000Z`, decided)
        expect(clutchIntent(room.build(), clutch)).toBe(decided.intent)
        room.snapshot.facts = facts.filter((fact) => fact !== decision)
        expect(day(room)).toEqual(before)
      }),
      bounded,
    )
  })

  test('a feed is never doubled because none was given: days without feedings ask for no more a feed', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const fed = randomRoom(seed, date)
        for (const culture of fed.snapshot.cultures)
          fed.fact('feeding', culture.id, '2026-03-08T12:00:00.000Z', { food: 'concentrate', amountMl: 1 })
        const amounts = (room: SnapshotBuilder) =>
          day(room)
            .drafts.filter(({ ruleId }) => ruleId === 'rotifer-feed')
            .map(({ key, content }) => [key, content.amount])
        expect(amounts(randomRoom(seed, date))).toEqual(amounts(fed))
      }),
      bounded,
    )
  })

  test('keeping the list twice changes nothing the second time', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const printed = () =>
          day(allOn(randomRoom(seed, date))).drafts.map((draft) => ({ ...draft, fingerprint: JSON.stringify(draft) }))
        const drafts = printed()
        const kept = reconcile({ kept: [], drafts: printed() }).create.map(({ key, fingerprint, content }) => ({
          id: key,
          key,
          state: 'open' as const,
          fingerprint,
          amount: content.amount,
        }))
        expect(reconcile({ kept, drafts })).toEqual({ create: [], update: [], withdraw: [], reopen: [] })
      }),
      bounded,
    )
  })
})

describe('the rules', () => {
  test('each has its own id, and every default its source', () => {
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length)
    for (const rule of rules)
      for (const [name, parameter] of Object.entries(rule.parameters))
        expect(sourceText(parameter.source).trim(), `${rule.id} ${name}`).not.toBe('')
  })

  test('each says the unit of a parameter once: its label does not repeat it', () => {
    for (const rule of rules)
      for (const parameter of Object.values(rule.parameters))
        if (parameter.type === 'number' && parameter.unit)
          expect(parameter.label, rule.id).not.toMatch(unitWords[parameter.unit])
  })

  test('each names all of its parameters in its sentence, and none that it does not have', () => {
    for (const rule of rules) {
      const named = [...rule.sentence.matchAll(/\{(\w+)\}/g)].map(([, name]) => name).sort()
      expect([...new Set(named)], rule.id).toEqual(Object.keys(rule.parameters).sort())
    }
  })

  test('each default lies within what a room may set it to', () => {
    for (const rule of rules)
      for (const [name, parameter] of Object.entries(rule.parameters)) {
        if (parameter.type !== 'number') continue
        expect(parameter.default, `${rule.id} ${name}`).toBeGreaterThanOrEqual(parameter.minimum)
        expect(parameter.default, `${rule.id} ${name}`).toBeLessThanOrEqual(parameter.maximum)
      }
  })
})

function volumeOf(room: SnapshotBuilder, id: string): number | null {
  const { cultures, tanks, batches } = room.snapshot
  const batch = batches.find((each) => each.id === id)
  const vessel = [...cultures, ...tanks].find((each) => each.id === (batch?.tankId ?? id))
  return vessel?.volumeL ?? null
}
