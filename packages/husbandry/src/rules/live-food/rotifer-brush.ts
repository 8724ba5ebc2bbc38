import { daysBetween } from '../../calendar/husbandry-day.ts'
import { commonPractice } from '../../engine/parameters.ts'
import { defineRule, factLink, settingLink } from '../../engine/rule.ts'
import { isCareDue, lastCare } from '../../state/care.ts'
import { cultureById, cultureStartDate } from '../../state/culture-state.ts'
import { phrase, taskContent } from '../phrases.ts'
import { firstRound } from '../rounds.ts'

export const rotiferBrush = defineRule({
  id: 'rotifer-brush',
  title: 'Brush the walls',
  sentence: 'Brush the walls of every rotifer culture every {everyDays} days.',
  subject: 'culture',
  station: 'live_food',
  isOnByDefault: true,
  parameters: {
    everyDays: {
      type: 'number',
      label: 'from one brushing to the next',
      unit: 'days',
      default: 1,
      minimum: 1,
      maximum: 14,
      source: commonPractice('feeding and brushing are daily'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const culture = cultureById(snapshot, subject.id)
    if (culture.kind !== 'rotifer') return []
    const startedOn = cultureStartDate(snapshot, culture, day.endsAt)
    const ageDays = daysBetween(startedOn, day.date)
    const due = { subjectId: culture.id, day, everyDays: parameters.everyDays, daysWithout: ageDays }
    if (!isCareDue(snapshot, 'brush_walls', due)) return []
    const last = lastCare(snapshot, 'brush_walls', { subjectId: culture.id, day })
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'brush',
          title: phrase('Brush the walls'),
          steps: [
            phrase(`Use the brush that belongs to ${culture.name}; after the count, before the feed.`),
            phrase('Brush walls and bottom down, let it settle for a few minutes, and draw off what lies thick.'),
          ],
          because: [
            last
              ? factLink(last, { label: 'last brushed' })
              : settingLink(culture.id, 'start', { label: 'started', text: startedOn }),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [{ kind: 'care', subjectId, data: { act: 'brush_walls' } }] }),
})
