import { larvalAmmoniaActDefinition } from '../../definitions/larvae/larval-ammonia-act.ts'
import { changeAfter, lastAmmoniaTest, wantsSponge } from '../../plans/ammonia-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { batchById } from '../../snapshot/by-id.ts'
import { tankOf } from '../../state/larval-diet.ts'
import { phrase } from '../../task/phrases.ts'
import { ammoniaLinks } from '../parts/ammonia-links.ts'
import { changeAgainst, isActedOn, missingSponge } from '../parts/water-act.ts'
import { waterChangeFacts } from '../parts/water-change.ts'

export const larvalAmmoniaAct = defineRule(larvalAmmoniaActDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const tank = tankOf(snapshot, batch)
    const test = tank && lastAmmoniaTest(snapshot, tank, day)
    if (!test || test.nh3MgPerL < parameters.actMgPerL || !isActedOn(snapshot, test.fact, day)) return []
    if (changeAfter(snapshot, { tank, batch, at: test.fact.at, day })) return []
    const { watchMgPerL: leftMgPerL, mostShare } = parameters
    const harm = { tank, test: test.fact, of: 'ammonia', mgPerL: test.nh3MgPerL, leftMgPerL, mostShare }
    return [
      changeAgainst(day, harm, {
        steps: [
          phrase('Half an hour by a drip line, not at once. It is tested again in the next round.'),
          phrase('Look for the cause: dead animals, food left over, a filter that stands.'),
          ...(wantsSponge(snapshot, { tank, batch, day }) ? [missingSponge] : []),
        ],
        read: [...ammoniaLinks(test), parameter('actMgPerL', 'and'), parameter('watchMgPerL', 'and')],
        most: parameter('mostShare', 'and'),
      }),
    ]
  },
  record: ({ context, values }) => ({ facts: waterChangeFacts(context, values) }),
})
