import type { Because, Phrase, TaskField } from '@fryward/shared'
import type { FactDraft } from '../../facts/fact.ts'
import type { Brushing } from '../../plans/brush-plan.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import type { SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { yesNoField } from '../../task/fields.ts'
import { phrase } from '../../task/phrases.ts'

/** How the walls of a culture are brushed, alone or as the first part of a feed. */
export function brushSteps(culture: SnapshotCulture): Phrase[] {
  return [
    phrase(`Use the brush that belongs to ${culture.name}; after the count, before the feed.`),
    phrase('Brush walls and bottom down, let it settle for a few minutes, and draw off what lies thick.'),
  ]
}

export const brushedField: TaskField = yesNoField({
  name: 'brushed',
  label: 'Walls brushed?',
  help: 'Leave empty when they were.',
})

export function brushLink(culture: SnapshotCulture, { last, startedOn }: Brushing, joins: Because['joins']): Because {
  return last
    ? factLink(last, { label: 'last brushed', joins })
    : settingLink(culture.id, 'start', { label: 'not brushed since its start', text: startedOn, joins })
}

export const brushFact = (subjectId: string): FactDraft => ({ kind: 'care', subjectId, data: { act: 'brush_walls' } })
