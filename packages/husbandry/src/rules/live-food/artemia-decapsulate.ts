import { decapsulation } from '@fryward/live-feed'
import type { Phrase } from '@fryward/shared'
import { elapsedDays } from '../../calendar/elapsed.ts'
import { firstRound, lastRound } from '../../calendar/rounds.ts'
import { artemiaDecapsulateDefinition } from '../../definitions/live-food/artemia-decapsulate.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink } from '../../rule/why.ts'
import { lastCare } from '../../state/care.ts'
import { decapsulationCautions } from '../../task/cautions.ts'
import { numberField } from '../../task/fields.ts'
import { degC, grams, measurableG, measurableMl, mL, share } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'

// Strengths that household and pool bleach are sold in. common practice
const soldStrengths = [0.0525, 0.06, 0.0825, 0.125] as const

// Hotter than this kills the cysts: FAO Fish. Tech. Pap. 361, sect. 4.2.3. from memory
const warmestBathC = 40

export const artemiaDecapsulate = defineRule(artemiaDecapsulateDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    if (!snapshot.cultures.some(({ kind }) => kind === 'artemia_hatch')) return []
    const last = lastCare(snapshot, 'decapsulate', { subjectId: subject.id, day })
    if (last && elapsedDays(last.at, firstRound(day).startsAt) < parameters.everyDays - 0.5) return []
    const { cystsG } = parameters
    const strength = last?.data.strength ?? parameters.bleachStrength
    const recipe = decapsulation({ cystsG, bleachPercent: strength * 100 })
    return [
      {
        roundId: lastRound(day).id,
        isForStandIn: false,
        content: taskContent({
          verb: 'start',
          title: titled('decapsulate', { amount: grams(cystsG), thing: 'cysts' }),
          amount: grams(cystsG),
          amountOf: 'cysts, dry',
          steps: recipeSteps({ cystsG, strength }),
          cautions: decapsulationCautions,
          fields: [
            numberField({
              name: 'strength',
              label: 'Strength of the bleach, by its label',
              help: 'The next time starts from it.',
              isRequired: true,
              unit: 'share',
              minimum: 0.04,
              maximum: 0.15,
              likely: [0.05, 0.13],
              usual: strength,
              step: 0.0025,
            }),
          ],
          because: [
            parameter('cystsG'),
            last?.data.strength === undefined
              ? parameter('bleachStrength', 'and')
              : factLink(last, { label: 'of the bleach last time', quantity: share(strength), joins: 'and' as const }),
            computedLink('published recipe, to the bleach at hand', recipe.source, {
              label: 'active chlorine',
              quantity: grams(measurableG(recipe.activeChlorineG)),
              joins: 'and',
            }),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ content, values, subjectId }) => {
    const cystsG = content.amount?.value
    const strength = numberOf(values, 'strength')
    const data = { act: 'decapsulate' as const, ...(cystsG ? { cystsG } : {}), ...(strength ? { strength } : {}) }
    return { facts: [{ kind: 'care', subjectId, data }] }
  },
})

/** Soda and water stand ready and cold before a cyst goes in; bleach last, by the strength on its label. */
function recipeSteps({ cystsG, strength }: { cystsG: number; strength: number }): Phrase[] {
  const recipe = decapsulation({ cystsG, bleachPercent: strength * 100 })
  const others = soldStrengths.filter((each) => Math.abs(each - strength) > 0.001)
  return [
    phrase('Read the strength on the bleach bottle: the amounts below are for {strength}.', {
      strength: share(strength),
    }),
    ...others.map((each) => {
      const other = decapsulation({ cystsG, bleachPercent: each * 100 })
      return phrase('With bleach of {strength}: {bleach} of it, and {water} of water.', {
        strength: share(each),
        bleach: mL(measurableMl(other.bleachMl)),
        water: mL(measurableMl(other.waterMl)),
      })
    }),
    phrase('Soak the cysts for half an hour to an hour in plain water with air, and drain them on a sieve.'),
    phrase(
      'Meanwhile dissolve {soda} of caustic soda in {water} of water: the soda into the water, little by little.',
      {
        soda: grams(measurableG(recipe.causticSodaG)),
        water: mL(measurableMl(recipe.waterMl)),
      },
    ),
    phrase('Stand that bowl in ice until it is cold. Only then put the drained cysts in.'),
    phrase('Add {bleach} of the bleach, and stir without a stop, under {warmest}: more ice when it warms.', {
      bleach: mL(measurableMl(recipe.bleachMl)),
      warmest: degC(warmestBathC),
    }),
    phrase('When they turn from brown through grey to orange, in minutes, pour them on a sieve and rinse at once.'),
    phrase('Rinse, dip into 0.1 % thiosulphate, and rinse until nothing smells of chlorine.'),
    phrase('What is not hatched now keeps in saturated brine in the cold, a week or two.'),
  ]
}
