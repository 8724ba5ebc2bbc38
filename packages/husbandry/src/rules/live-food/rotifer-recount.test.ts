import { describe, expect, test } from 'vitest'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { steadyCulture } from '../../testing/steady-culture.ts'
import { rotiferHarvest } from './rotifer-harvest.ts'
import { rotiferRecount } from './rotifer-recount.ts'
import { rotiferTrouble } from './rotifer-trouble.ts'

const date = '2026-03-10'
const today = [rotiferRecount, rotiferHarvest, rotiferTrouble]
const ruleIds = (room: SnapshotBuilder, on = date) => room.drafts(on, today).drafts.map(({ ruleId }) => ruleId)

/** A culture that held 240 per mL under a fifth a day, and on the day is counted thinner. */
function fallen(perMl: number, eggs = { eggs: 40, females: 60 }) {
  const room = new SnapshotBuilder()
  const culture = steadyCulture(room, { date: '2026-03-09' })
  room.count(culture, '2026-03-10T06:40:00.000Z', [perMl, perMl + 2, perMl - 2], eggs)
  return { room, culture }
}

describe('a fall', () => {
  test('is counted again the same day with a look for signs, and nothing is thinned', () => {
    const { room, culture } = fallen(110)
    expect(ruleIds(room)).toEqual(['rotifer-recount'])
    const draft = onlyDraft(room.drafts(date, today))
    expect(draft.content.fields.map(({ name }) => name)).toEqual(['count', 'signs'])
    const count = { animals: [240, 236, 244], volumeMl: 1, eggs: 30, females: 60 }
    const { facts } = signOff(rotiferRecount, draft, { count })
    expect(facts).toEqual([{ kind: 'count', subjectId: culture.id, data: { of: 'culture', dilution: 1, ...count } }])
    // They are found again: the first was a bad sample, and thinning goes on.
    room.append(facts[0]!, { at: '2026-03-10T07:10:00.000Z' })
    expect(ruleIds(room)).toEqual(['rotifer-harvest'])
  })

  test('of which a second count says the same is trouble, whatever is left', () => {
    const { room, culture } = fallen(110)
    room.count(culture, '2026-03-10T07:10:00.000Z', [105, 108, 111], { eggs: 40, females: 60 })
    expect(ruleIds(room)).toEqual(['rotifer-trouble'])
    const steps = onlyDraft(room.drafts(date, today)).content.steps.map(({ text }) => text)
    expect(steps.join(' ')).toContain('Do not thin it')
  })

  test('is none where it was taken out', () => {
    expect(ruleIds(fallen(185).room)).not.toContain('rotifer-recount')
  })
})

describe('few eggs', () => {
  test('on ten females are no alarm: fifty are asked for', () => {
    const { room } = fallen(240, { eggs: 0, females: 10 })
    expect(ruleIds(room)).toContain('rotifer-recount')
    expect(ruleIds(room)).not.toContain('rotifer-trouble')
    expect(saidTitle(room.drafts(date, [rotiferRecount]).drafts[0])).toBe('Count eggs again, on 50 adult females')
  })

  test('on fifty are trouble', () => {
    const { room } = fallen(240, { eggs: 2, females: 50 })
    expect(ruleIds(room)).toContain('rotifer-trouble')
    expect(ruleIds(room)).not.toContain('rotifer-recount')
  })

  test('in a crowded culture mean thin it', () => {
    const room = new SnapshotBuilder()
    const culture = room.culture({ volumeL: 18, startedAt: '2026-02-20T06:30:00.000Z' })
    ;[640, 690, 720, 735, 730, 742, 738].forEach((density, index) => {
      room.count(culture, `2026-03-0${4 + index}T06:30:00.000Z`.replace('010', '10'), [density, density, density], {
        eggs: 3,
        females: 60,
      })
    })
    expect(ruleIds(room).sort()).toEqual(['rotifer-harvest', 'rotifer-trouble'])
    const trouble = onlyDraft(room.drafts(date, [rotiferTrouble])).content
    expect(trouble.steps.map(({ text }) => text).join(' ')).toContain('Thin it today')
    expect(trouble.steps.map(({ text }) => text).join(' ')).not.toContain('Do not thin it')
  })
})
