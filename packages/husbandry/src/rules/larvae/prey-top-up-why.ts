import type { Because } from '@fryward/shared'
import type { larvalPreyTopUpDefinition } from '../../definitions/larvae/larval-prey-top-up.ts'
import type { TopUpPlan } from '../../plans/top-up-wanted.ts'
import { computedLink, factLink, planLink, profileLink, settingLink } from '../../rule/why.ts'
import type { LarvalDiet } from '../../state/larval-diet.ts'
import { animals, hours, litres, mL, perMl, roundAnimals, share } from '../../task/measures.ts'

type TopUpParameter = (
  name: keyof typeof larvalPreyTopUpDefinition.parameters & string,
  joins?: Because['joins'],
) => Because

/** Why a feed asks for so much: what is wanted, what is left, what will be eaten, and how dense the culture is. */
export function topUpLinks(
  plan: TopUpPlan,
  about: { parameter: TopUpParameter; diet: LarvalDiet | null; plannedMl: number },
): Because[] {
  const { parameter, diet, plannedMl } = about
  return [
    parameter('targetPerMl'),
    residualLink(plan, parameter),
    settingLink(plan.tank.id, 'volume', {
      label: `in ${plan.tank.name}`,
      quantity: litres(plan.tank.volumeL),
      joins: 'times',
    }),
    ...grazingLinks(plan),
    ...shortLinks(plan),
    computedLink('prey top-up', null, { label: 'to add', quantity: animals(roundAnimals(plan.animals)) }),
    ...plan.density.because.map((link, index): Because => (index === 0 ? { ...link, joins: 'divided_by' } : link)),
    parameter('sievingLoss', 'and'),
    parameter('mostPerMl', 'and'),
    parameter('mostWhenEatenPerMl', 'and'),
    ...usualLinks(diet),
    ...(plan.order
      ? [
          planLink(plan.order.madeAt, {
            label: `of ${plan.culture.name} over the whole day`,
            quantity: litres(plan.order.volumeL),
          }),
        ]
      : []),
    computedLink('prey top-up', null, {
      label: `of ${plan.culture.name}, to what a jug or syringe shows`,
      quantity: mL(plannedMl),
    }),
  ]
}

/** Which part of what they want a smaller feed is, so that the chain multiplies out. */
function shortLinks({ boundedBy, culture, order, share: part }: TopUpPlan): Because[] {
  if (boundedBy === null) return []
  const quantity = share(Number(part.toFixed(2)))
  return [
    boundedBy === 'plan' && order
      ? planLink(order.madeAt, { label: 'of it, by the plan of the food', quantity, joins: 'times' })
      : computedLink('what it can give today, alike for all that eat from it', null, {
          label: `of it, as far as ${culture.name} goes`,
          quantity,
          joins: 'times',
        }),
  ]
}

function grazingLinks({ grazing, topUp, hours: until }: TopUpPlan): Because[] {
  if (!grazing || topUp.expectedGrazing <= 0) return []
  const counts = (grazing.light?.observations ?? 0) + (grazing.dark?.observations ?? 0)
  return [
    computedLink('counts before and after feeds', (grazing.light ?? grazing.dark)?.source ?? null, {
      label: `eaten until the next feed, learned from ${counts === 1 ? 'one count' : `${counts} counts`} here, light and dark apart`,
      quantity: animals(roundAnimals(topUp.expectedGrazing)),
      joins: 'plus',
    }),
    ...(['light', 'dark'] as const).flatMap((when) =>
      until[when] > 0
        ? [
            computedLink('the rounds and the light over the tank', null, {
              label: `in the ${when} until the next feed`,
              quantity: hours(Number(until[when].toFixed(1))),
              joins: 'and' as const,
            }),
          ]
        : [],
    ),
  ]
}

function usualLinks(diet: LarvalDiet | null): Because[] {
  const usual = diet?.species.feeding.rotifersPerMl
  if (!diet || !usual?.value) return []
  return [
    profileLink(diet.species.tradeName, usual.source.citation, {
      label: `usual for ${diet.species.tradeName}`,
      text: `${usual.value.from}-${usual.value.to} per mL`,
      joins: 'and',
    }),
  ]
}

function residualLink({ residual }: TopUpPlan, parameter: TopUpParameter): Because {
  const quantity = perMl(residual.perMl)
  switch (residual.kind) {
    case 'counted':
      return factLink(residual.count.fact, { label: 'left, counted', quantity, joins: 'minus' })
    case 'last-count':
      return factLink(residual.count.fact, { label: 'left at the last count', quantity, joins: 'minus' })
    case 'assumed':
      return { ...parameter('refillUnderPerMl', 'minus'), label: 'left, until it is counted taken as' }
    case 'none-fed':
      return computedLink('no feed yet', null, { label: 'left: none fed yet', quantity, joins: 'minus' })
  }
}
