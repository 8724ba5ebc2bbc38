import { describe, expect, test } from 'vitest'
import { draftDay, type TaskDraft } from '../engine/draft-day.ts'
import { broodstockForms } from '../testing/forms/broodstock-forms.ts'
import { cultureForms } from '../testing/forms/culture-forms.ts'
import type { Form } from '../testing/forms/form.ts'
import { formDate } from '../testing/forms/form-rooms.ts'
import { larvaeForms } from '../testing/forms/larvae-forms.ts'
import { saidField } from '../testing/forms/said-field.ts'
import { tankForms } from '../testing/forms/tank-forms.ts'
import { randomRoom } from '../testing/random-room.ts'
import { findRule, rules } from './index.ts'

const forms: Record<string, readonly Form[]> = {
  cultures: cultureForms,
  larvae: larvaeForms,
  pairs: broodstockForms,
  'grown fish and the room': tankForms,
}

/** The first task of a rule in a room; fails with the gaps where it asks for nothing. */
function asked({ rule: id, ask, on = formDate }: Form): TaskDraft {
  const rule = findRule(id)
  if (!rule) throw new Error(`There is no rule ${id}`)
  const { drafts, gaps } = ask().drafts(on, [rule])
  if (!drafts[0]) throw new Error(`${id} asks for nothing: ${JSON.stringify(gaps)}`)
  return drafts[0]
}

// Refused outside the first range, asked about outside the likely one; each stands with why it is so.
describe.each(Object.keys(forms))('what may be typed of %s', (about) => {
  test.each(forms[about]!.map((form) => [form.rule, form.of, form] as const))('%s: %s', (_rule, _of, form) => {
    expect(asked(form).content.fields.map(saidField)).toEqual(form.fields.map(([line]) => line))
  })
})

test('no room is asked for a field that does not stand among these', () => {
  const told = new Set(
    Object.values(forms)
      .flat()
      .flatMap(({ rule, fields }) => fields.map(([line]) => `${rule} ${line.split(':')[0]}`)),
  )
  const missing = new Set<string>()
  for (let seed = 1; seed <= 25; seed += 1) {
    const room = randomRoom(seed, formDate)
    for (const { id, isOnByDefault } of rules) if (!isOnByDefault) room.setting(id, { isOn: true })
    // Of tanks that are topped up in one walk each has a field of its own.
    for (const { ruleId, content } of draftDay({ snapshot: room.build(), date: formDate, rules }).drafts)
      for (const { name } of content.fields)
        if (!told.has(`${ruleId} ${name.replace(/^(addedL)\d$/, '$1')}`)) missing.add(`${ruleId} ${name}`)
  }
  expect([...missing]).toEqual([])
})
