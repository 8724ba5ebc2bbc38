import { middleRound } from '../../calendar/rounds.ts'
import { tankWaterTestDefinition } from '../../definitions/room/tank-water-test.ts'
import { tankChange } from '../../plans/tank-change-plan.ts'
import { isTestDue, tankRetest } from '../../plans/tank-water-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { holdsFish } from '../../state/tank-fish.ts'
import { fishWaterCautions } from '../../task/cautions.ts'
import { taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { missingFilter } from '../parts/water-act.ts'
import { waterTestFacts, waterTestFields, waterTestSteps } from '../parts/water-test.ts'

export const tankWaterTest = defineRule(tankWaterTestDefinition, {
  draft: ({ snapshot, day, subject, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    if (!holdsFish(snapshot, tank, day)) return []
    // A change that is due the same day takes its test along.
    const withChange = tankChange(snapshot, tank, day) !== null
    const last = factsUntil(snapshot, 'water_test', { subjectId: tank.id, until: day.endsAt }).at(-1)
    const retest = tankRetest(snapshot, { tank, day })
    if (!retest && (withChange || !isTestDue(snapshot, tank, day))) return []
    const round = retest?.round ?? middleRound(day)
    return [
      {
        roundId: round.id,
        content: taskContent({
          verb: 'test',
          title: titled('test', { thing: retest ? 'ammonia and nitrite again' : 'the water' }),
          steps: retest && !tank.hasFilter ? [...waterTestSteps, missingFilter] : waterTestSteps,
          cautions: fishWaterCautions,
          fields: waterTestFields(tank),
          because: [
            last
              ? factLink(last, { label: 'last tested' })
              : settingLink(tank.id, 'water tests', { label: 'tests so far', text: 'none' }),
            ...(retest?.change
              ? [factLink(retest.change, { label: 'water changed against it', joins: 'and' as const })]
              : []),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => ({ facts: waterTestFacts(subjectId, values) }),
})
