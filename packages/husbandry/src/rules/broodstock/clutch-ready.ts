import type { CareKind, firstFoods, Phrase } from '@fryward/shared'
import { addDays, type HusbandryDay } from '../../calendar/husbandry-day.ts'
import { type DayRound, firstRound } from '../../calendar/rounds.ts'
import { clutchReadyDefinition } from '../../definitions/broodstock/clutch-ready.ts'
import { collectingRound } from '../../plans/floating-eggs.ts'
import { freeLarvalTanks, hatchTankFor, readyingDue } from '../../plans/hatch-tank-plan.ts'
import { Gap } from '../../rule/gap.ts'
import { defineRule } from '../../rule/rule.ts'
import { pairById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotClutch, SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { isBrooder, type SpeciesProfile } from '../../species/index.ts'
import { animals, litres, perMl, roundAnimals } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { asksForDecision } from './clutch-decide.ts'
import { mayBe, nightsLink } from './hatch-night.ts'

// Common practice: nothing that hatches is lifted out of water or taken in a dry net.
const carryStep: Record<CareKind, string> = {
  nest: 'A clean carrier for the nest, an air stone to stand in for the male, a dim red torch.',
  mouth: 'A jug to carry the young in water, never a dry net; a dim red torch.',
  pouch: 'A jug to carry the young in water, never a dry net; a dim red torch.',
  pelagic:
    'Now the eggs into it from the cup, in water, never in a net. White and sunk ones stay behind: they foul it.',
}

const foodWords: Record<(typeof firstFoods)[number], string> = {
  ciliate: 'ciliates',
  rotifer: 'rotifers',
  copepod: 'copepod nauplii',
  artemia: 'newly hatched Artemia nauplii',
}

export const clutchReady = defineRule(clutchReadyDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const found = readyingDue(snapshot, subject.id, day)
    if (!found) return []
    const { clutch, outlook, isDecided } = found
    if (!isDecided) {
      if (asksForDecision(snapshot)) return []
      throw new Gap(`${clutch.name} ${mayBe(clutch)} soon: decide on its page whether to raise all, part or none.`)
    }
    const tank = hatchTankFor(snapshot, clutch, day)
    if (!tank) {
      const isNoneEmpty = freeLarvalTanks(snapshot).length === 0
      const why = isNoneEmpty ? 'no larval tank is empty' : 'every empty larval tank is for another clutch'
      throw new Gap(`${clutch.name} ${mayBe(clutch)} soon, and ${why}: ready one or add one.`)
    }
    const isFloating = clutch.care === 'pelagic'
    return [
      {
        roundId: isFloating ? collectedIn(snapshot, clutch, day).id : firstRound(day).id,
        content: taskContent({
          verb: 'check',
          title: titled('ready', {
            thing: isFloating ? 'the eggs' : isBrooder(clutch.care) ? 'the young' : 'the larvae',
            to: [{ name: tank.name }],
          }),
          steps: [
            phrase(
              `${tank.name} clean, filled to {volume} with the parents’ own water or matched to it, gentle air, warm.`,
              {
                volume: litres(tank.volumeL),
              },
            ),
            foodStep(outlook.species, tank),
            ...(isFloating || isBrooder(clutch.care)
              ? []
              : [phrase('Something to cover the tank with: no lamp, no window, no glow of a pump.')]),
            ...(clutch.care === 'pouch'
              ? [phrase('Something thin to hold on to later: netting or threads, weighted down.')]
              : []),
            // Just hatched they are drawn into what they swim clear of later. common practice
            ...(tank.hasFilter && outlook.species.feeding.artemiaFirstDay.value > 0 ? [filterOut] : []),
            phrase(carryStep[clutch.care]),
          ],
          cautions: outlook.species.cautions.map(({ value }) => value),
          because: [
            ...outlook.because,
            nightsLink(outlook, { from: day.date, to: addDays(day.date, parameters.daysAhead) }),
            parameter('fromChance', 'and'),
            parameter('daysAhead', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ subjectId }) => ({ facts: [{ kind: 'care', subjectId, data: { act: 'ready_hatch_tank' } }] }),
})

const filterOut = phrase(
  'Its filter out, kept ripe in a sound tank until they take Artemia: say on the tank’s page that none runs.',
)

/** What has to be there when they begin to feed. */
function foodStep({ feeding }: SpeciesProfile, { volumeL }: SnapshotTank): Phrase {
  const { rotifersPerMl, firstFood, firstFeedDay } = feeding
  if (firstFeedDay.value > 0)
    return phrase(
      `They live on their yolk for a day or two after the hatch. First food ready for then: ${foodWords[firstFood.value]}.`,
    )
  if (firstFood.value !== 'rotifer' || !rotifersPerMl.value)
    return phrase(`First food ready for the morning: ${foodWords[firstFood.value]}.`)
  return phrase('Rotifers for the first morning: {number}, {density} of its water, counted and small enough.', {
    number: animals(roundAnimals(rotifersPerMl.value.to * volumeL * 1000)),
    density: perMl(rotifersPerMl.value.to),
  })
}

/** Eggs found this evening wait in their cup; those found this morning too. */
function collectedIn(snapshot: RoomSnapshot, clutch: SnapshotClutch, day: HusbandryDay): DayRound {
  return clutch.spawnedAt >= day.startsAt
    ? collectingRound(snapshot, pairById(snapshot, clutch.pairId), day)
    : firstRound(day)
}
