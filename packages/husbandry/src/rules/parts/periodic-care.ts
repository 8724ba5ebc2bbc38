import type { Because, CareAct, Phrase, TaskField, Title, Verb } from '@fryward/shared'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { afterMorning, firstRound, lastRound, middleRound } from '../../calendar/rounds.ts'
import type { RuleDefinition } from '../../rule/definition.ts'
import type { NumberParameter } from '../../rule/parameters.ts'
import { defineRule, type Rule, type Subject } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import type { RoomSnapshot } from '../../snapshot/room-snapshot.ts'
import { isCareDue, lastCare } from '../../state/care.ts'
import { taskContent } from '../../task/phrases.ts'
import { textOf } from '../../task/values.ts'

const roundFor = { first: firstRound, 'after-morning': afterMorning, middle: middleRound, last: lastRound } as const

/** What one piece of care looks like on a thing that it applies to. */
export type CareCall = {
  title: Title
  steps: Phrase[]
  cautions?: string[]
  fields?: TaskField[]
  because?: Because[]
  /** Days that count as passed while it has never been done: its age, or `Infinity` for due at once. */
  daysWithout: number
}

/**
 * A rule of the simplest kind: something is done every so many days, is one tap, and is not asked for again before its
 * time however it was written down.
 */
export function periodicCare(
  definition: RuleDefinition<{ everyDays: NumberParameter }>,
  care: {
    verb: Verb
    act: CareAct
    round: keyof typeof roundFor
    isForStandIn?: boolean
    applies: (input: { snapshot: RoomSnapshot; subject: Subject; day: HusbandryDay }) => CareCall | null
  },
): Rule {
  const { act, applies } = care
  return defineRule(definition, {
    draft: ({ snapshot, day, subject, parameters, parameter }) => {
      const call = applies({ snapshot, subject, day })
      if (!call) return []
      const about = { subjectId: subject.id, day }
      const { daysWithout } = call
      if (!isCareDue(snapshot, act, { ...about, everyDays: parameters.everyDays, daysWithout })) return []
      const last = lastCare(snapshot, act, about)
      return [
        {
          roundId: roundFor[care.round](day).id,
          isForStandIn: care.isForStandIn ?? true,
          content: taskContent({
            verb: care.verb,
            title: call.title,
            steps: call.steps,
            cautions: call.cautions ?? [],
            fields: call.fields ?? [],
            because: [
              last
                ? factLink(last, { label: 'last done' })
                : settingLink(subject.id, 'history', { label: 'not yet done' }),
              parameter('everyDays', 'and'),
              ...(call.because ?? []),
            ],
          }),
          context: {},
        },
      ]
    },
    record: ({ values, subjectId }) => {
      const note = textOf(values, 'note')
      return { facts: [{ kind: 'care', subjectId, data: { act, ...(note ? { note } : {}) } }] }
    },
  })
}
