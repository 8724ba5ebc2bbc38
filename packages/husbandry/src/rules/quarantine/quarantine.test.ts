import { describe, expect, test } from 'vitest'
import type { Rule } from '../../rule/rule.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { quarantineAcclimatise } from './quarantine-acclimatise.ts'
import { quarantineArrival } from './quarantine-arrival.ts'
import { quarantineEnd } from './quarantine-end.ts'
import { quarantineWatch } from './quarantine-watch.ts'

const date = '2026-03-10'
const all = [quarantineArrival, quarantineAcclimatise, quarantineWatch, quarantineEnd]

function quarantineRoom() {
  const room = new SnapshotBuilder()
  const tank = room.tank({ name: 'Q1', kind: 'quarantine', volumeL: 40, salinity: 33 })
  const asked = (on: string) => room.drafts(on, all).drafts.map(({ ruleId }) => ruleId)
  const keep = (rule: Rule, values: Record<string, unknown>, at: string) => {
    const draft = onlyDraft(room.drafts(at.slice(0, 10), [rule]))
    for (const fact of signOff(rule, draft, values).facts) room.append(fact, { at })
  }
  return { room, tank, asked, keep }
}

describe('quarantine', () => {
  test('empty asks once a week whether fish have come, and nothing else', () => {
    const { asked, keep } = quarantineRoom()
    expect(asked(date)).toEqual(['quarantine-arrival'])
    keep(quarantineArrival, { number: 0 }, `${date}T18:40:00.000Z`)
    expect([asked(date), asked('2026-03-16'), asked('2026-03-17')]).toEqual([[], [], ['quarantine-arrival']])
  })

  test('fish that arrive are brought over in three equal parts with their volumes, watched, and let out in the end', () => {
    const { room, tank, asked, keep } = quarantineRoom()
    keep(quarantineArrival, { number: 4, bagL: 2, bagSalinity: 35 }, `${date}T15:00:00.000Z`)
    expect(asked(date)).toEqual(['quarantine-acclimatise', 'quarantine-watch'])
    const draft = onlyDraft(room.drafts(date, [quarantineAcclimatise]))
    expect(draft.dueAt).toBe(`${date}T15:00:00.000Z`)
    // Half of the bag's 2 L each time: 2 of difference becomes 0.8.
    const additions = draft.content.steps.flatMap(({ quantities }) => (quantities.each ? [quantities.each] : []))
    expect(additions).toEqual([1, 1, 1].map((value) => ({ value, unit: 'L' })))
    keep(quarantineAcclimatise, { dead: 1 }, `${date}T15:40:00.000Z`)
    expect(asked(date)).toEqual(['quarantine-watch'])
    expect(room.snapshot.facts.at(-1)).toMatchObject({ kind: 'loss', data: { number: 1, of: 'adults' } })
    // Thirty days from the arrival on the 10th; a spot on the 2nd of April holds it until two weeks later.
    expect(asked('2026-04-08')).not.toContain('quarantine-end')
    expect(asked('2026-04-09')).toContain('quarantine-end')
    room.fact('observation', tank.id, '2026-04-02T18:40:00.000Z', { signs: ['spots_or_wounds'] })
    expect(asked('2026-04-15')).not.toContain('quarantine-end')
    keep(quarantineEnd, { answer: 'stay', note: 'one still hides' }, '2026-04-16T12:40:00.000Z')
    expect(asked('2026-04-22')).not.toContain('quarantine-end')
    keep(quarantineEnd, { answer: 'moved' }, '2026-04-23T12:40:00.000Z')
    expect([asked('2026-04-23'), asked('2026-04-30')]).toEqual([[], ['quarantine-arrival']])
  })

  test('in which the last fish has died asks again whether fish have come', () => {
    const { room, tank, asked, keep } = quarantineRoom()
    keep(quarantineArrival, { number: 3 }, `${date}T15:00:00.000Z`)
    keep(quarantineWatch, { signs: ['gasping'], dead: 2 }, `${date}T18:40:00.000Z`)
    expect(asked('2026-03-11')).toEqual(['quarantine-watch'])
    room.fact('loss', tank.id, '2026-03-11T08:00:00.000Z', { number: 1, of: 'adults' })
    expect(asked('2026-03-11')).toEqual(['quarantine-arrival'])
    keep(quarantineArrival, { number: 2 }, '2026-03-11T18:40:00.000Z')
    expect(asked('2026-03-12')).toEqual(['quarantine-watch'])
  })

  test('far from its salinity the tank comes to the fish, and each part is as much as the bag holds', () => {
    const { room, keep } = quarantineRoom()
    keep(quarantineArrival, { number: 2, bagL: 1.5, bagSalinity: 25 }, `${date}T15:00:00.000Z`)
    const { steps } = onlyDraft(room.drafts(date, [quarantineAcclimatise])).content
    expect(steps[0]?.text).toContain('bring the tank to theirs first')
    expect(steps.flatMap(({ quantities }) => quantities.each?.value ?? [])).toEqual([1.5, 1.5, 1.5])
  })

  test('each part is so much that no more than 1 of the difference is left when they are lifted over', () => {
    const leftOf = (bagSalinity: number) => {
      const { room, keep } = quarantineRoom()
      keep(quarantineArrival, { number: 2, bagL: 10, bagSalinity }, `${date}T15:00:00.000Z`)
      const { steps } = onlyDraft(room.drafts(date, [quarantineAcclimatise])).content
      const addedL = steps.reduce((sum, { quantities }) => sum + (quantities.each?.value ?? 0), 0)
      return { left: (Math.abs(bagSalinity - 33) * 10) / (10 + addedL), addedL, first: steps[0]?.text ?? '' }
    }
    // Never less than half of the bag each time, as little as they are apart.
    expect(leftOf(34.5)).toMatchObject({ left: 0.6, addedL: 15 })
    // What fish bear at once: 1 psu, common practice. No more water than that takes is carried.
    for (const bagSalinity of [29.5, 36, 36.9]) {
      expect(leftOf(bagSalinity).left).toBeLessThanOrEqual(1.01)
      expect(leftOf(bagSalinity).left).toBeGreaterThan(0.95)
    }
    // More than 4 apart the tank comes to the fish.
    expect(leftOf(37).first).not.toContain('bring the tank')
    expect(leftOf(37.5).first).toContain('bring the tank to theirs first')
  })

  test('is watched daily, last of all, with the cautions for hands and medicines', () => {
    const { room, tank } = quarantineRoom()
    room.fact('care', tank.id, '2026-03-01T18:40:00.000Z', { act: 'fish_arrived', number: 3 })
    const draft = onlyDraft(room.drafts(date, [quarantineWatch]))
    expect([draft.roundId, draft.station]).toEqual(['evening', 'quarantine'])
    expect(draft.content.cautions.join(' ')).toMatch(/Mycobacterium marinum.*as a veterinarian has prescribed/)
    const typed = { signs: ['gasping'], dead: 1, note: 'bath as prescribed' }
    const [fact, loss] = signOff(quarantineWatch, draft, typed).facts
    expect(fact).toEqual({
      kind: 'observation',
      subjectId: tank.id,
      data: { signs: ['gasping'], note: 'bath as prescribed' },
    })
    expect(loss).toEqual({ kind: 'loss', subjectId: tank.id, data: { number: 1, of: 'adults' } })
    const young = signOff(quarantineWatch, draft, { dead: 2, deadOf: 'juveniles' }).facts[1]
    expect(young?.data).toEqual({ number: 2, of: 'juveniles' })
    room.append(fact!, { at: '2026-03-10T18:50:00.000Z' })
    expect(room.drafts(date, [quarantineWatch]).drafts).toEqual([])
    expect(signOff(quarantineWatch, draft).facts).toEqual([
      { kind: 'observation', subjectId: tank.id, data: { signs: ['all_well'], note: '' } },
    ])
    const given = { product: 'as on the bottle', dose: '1 mL in 10 L', prescribedBy: 'Dr Reis' }
    expect(signOff(quarantineWatch, draft, given).facts[1]).toEqual({
      kind: 'treatment',
      subjectId: tank.id,
      data: given,
    })
    expect(signOff(quarantineWatch, draft, { product: 'as on the bottle' }).facts[1]).toMatchObject({
      data: { note: 'Treatment, not complete: as on the bottle' },
    })
  })
})
