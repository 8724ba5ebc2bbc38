import type { Because } from '@fryward/shared'
import { tankWaterActDefinition } from '../../definitions/room/tank-water-act.ts'
import { type HarmfulWater, harmfulWater, tankChangeAfter } from '../../plans/tank-water-plan.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import { hasLarvae, holdsFish } from '../../state/tank-fish.ts'
import { fishWaterCautions } from '../../task/cautions.ts'
import { phrase } from '../../task/phrases.ts'
import { ammoniaLinks } from '../parts/ammonia-links.ts'
import { changeAgainst, isActedOn, missingFilter } from '../parts/water-act.ts'
import { waterChangeFacts } from '../parts/water-change.ts'

export const tankWaterAct = defineRule(tankWaterActDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    // Where larvae swim too their own, stricter limits say.
    if (!holdsFish(snapshot, tank, day) || hasLarvae(snapshot, tank)) return []
    const found = harmfulWater(snapshot, tank, day)
    if (!found || !isActedOn(snapshot, found.fact, day)) return []
    if (tankChangeAfter(snapshot, { tank, at: found.fact.at, day })) return []
    const { of, mgPerL, limitMgPerL } = found
    const harm = { tank, test: found.fact, of, mgPerL, leftMgPerL: limitMgPerL / 2, mostShare: parameters.mostShare }
    return [
      changeAgainst(day, harm, {
        steps: [
          phrase('More air at once. No food until the next test; half a feed after it while any is left.'),
          tank.hasFilter
            ? phrase('Look for the cause: a dead fish, food left over, a filter that stands or was washed too clean.')
            : missingFilter,
          phrase('It is tested again in the next round. Gasping fish go to a tank whose water is sound.'),
        ],
        cautions: fishWaterCautions,
        read: [
          ...(found.ammonia ? ammoniaLinks(found.ammonia) : nitriteLinks(found)),
          ...(found.change ? [factLink(found.change, { label: 'water changed since', joins: 'and' as const })] : []),
          parameter(of === 'ammonia' ? 'ammoniaMgPerL' : 'nitriteMgPerL', 'and'),
        ],
        most: parameter('mostShare', 'and'),
      }),
    ]
  },
  record: ({ context, values }) => ({ facts: waterChangeFacts(context, values) }),
})

const nitriteLinks = ({ fact }: HarmfulWater): Because[] => [
  factLink(fact, { label: 'nitrite (as N)', quantity: { value: fact.data.nitriteNMgPerL ?? 0, unit: 'mg_per_L' } }),
]
