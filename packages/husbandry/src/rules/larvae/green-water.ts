import type { Phrase } from '@fryward/shared'
import { z } from 'zod'
import { commonPractice, fromMemory } from '../../engine/parameters.ts'
import { computedLink, defineRule, factLink, Gap, settingLink } from '../../engine/rule.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotConcentrate } from '../../snapshot.ts'
import { factsOnDay, factsUntil } from '../../state/day-facts.ts'
import { culturesFeeding } from '../../state/feed-links.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { givenAmountField } from '../fields.ts'
import { type MeasuredDose, measuredDose } from '../measured-dose.ts'
import { litres, mL } from '../measures.ts'
import { phrase, taskContent } from '../phrases.ts'
import { firstRound } from '../rounds.ts'
import { numberOf } from '../values.ts'
import { batchById } from './prey-count.ts'

const ContextSchema = z.object({ concentrateId: z.string(), plannedMl: z.number(), dilution: z.number() })

export const larvalGreenWater = defineRule({
  id: 'larval-green-water',
  title: 'Green the larvae’s water',
  sentence:
    'While larvae eat rotifers keep {cellsPerMl} algal cells in their water: all of it at first, then each morning the {lostShare} that a day takes away.',
  subject: 'larval_batch',
  station: 'larvae',
  isOnByDefault: true,
  parameters: {
    cellsPerMl: {
      type: 'number',
      label: 'to keep',
      unit: 'cells_per_mL',
      default: 200_000,
      minimum: 10_000,
      maximum: 2_000_000,
      source: fromMemory('1e5 to 5e5 Nannochloropsis per mL: Moorhead & Zeng 2010, Rev. Fish. Sci. 18:315-343'),
    },
    lostShare: {
      type: 'number',
      label: 'gone in a day',
      unit: 'share',
      default: 0.5,
      minimum: 0.05,
      maximum: 1,
      source: commonPractice('eaten, settled and changed away: about half a day'),
    },
  },
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const batch = batchById(snapshot, subject.id)
    const diet = larvalDiet(batch, day.date)
    if (!diet?.isOnRotifers) return []
    if (factsOnDay(snapshot, 'feeding', { subjectId: batch.id, day }).some(isGreenFood)) return []
    const tank = tankOf(snapshot, batch)
    if (!tank) throw new Gap(`${batch.name}: say which tank it is in.`)
    const bottle = bottleFor(snapshot, batch, day.date)
    if (!bottle)
      throw new Gap(`Say which concentrate greens the water of ${batch.name}, and its strength from the label.`)
    const before = factsUntil(snapshot, 'feeding', { subjectId: batch.id, until: day.startsAt }).findLast(isGreenFood)
    const share = before ? parameters.lostShare : 1
    const dose = measuredDose((parameters.cellsPerMl * tank.volumeL * 1000 * share) / bottle.cellsPerMl)
    const what = dose.dilution > 1 ? `${bottle.name} diluted 1 in ${dose.dilution}` : bottle.name
    return [
      {
        roundId: firstRound(day).id,
        content: taskContent({
          verb: 'feed',
          title: phrase(`{amount} ${what}: green water`, {
            amount: mL(dose.amountMl),
          }),
          amount: mL(dose.amountMl),
          amountOf: what,
          steps: greenSteps(bottle, dose),
          fields: [
            givenAmountField({
              name: 'amountMl',
              label: `Given, of ${what}`,
              unit: 'mL',
              planned: dose.amountMl,
              maximum: Math.max(50, dose.amountMl * 10),
              step: 0.1,
            }),
          ],
          because: [
            parameter('cellsPerMl'),
            settingLink(tank.id, 'volume', {
              label: `in ${tank.name}`,
              quantity: litres(tank.volumeL),
              joins: 'times',
            }),
            ...(before ? [parameter('lostShare', 'times')] : []),
            settingLink(null, `label of ${bottle.name}`, {
              label: `in ${bottle.name}`,
              quantity: { value: bottle.cellsPerMl, unit: 'cells_per_mL' },
              joins: 'divided_by',
            }),
            computedLink('green water by cells', null, {
              label: `to what a syringe shows${dose.dilution > 1 ? `, diluted 1 in ${dose.dilution}` : ''}`,
              quantity: mL(dose.amountMl),
            }),
            ...(before ? [factLink(before, { label: 'last greened', joins: 'and' as const })] : []),
          ],
        }),
        context: { concentrateId: bottle.id, plannedMl: dose.amountMl, dilution: dose.dilution },
      },
    ]
  },
  record: ({ context, values, subjectId }) => {
    const { concentrateId, plannedMl, dilution } = ContextSchema.parse(context)
    const amountMl = (numberOf(values, 'amountMl') ?? plannedMl) / dilution
    return { facts: [{ kind: 'feeding', subjectId, data: { food: 'concentrate', concentrateId, amountMl } }] }
  },
})

const isGreenFood = ({ data }: { data: { food: string } }): boolean =>
  data.food === 'concentrate' || data.food === 'live_microalgae'

function greenSteps(bottle: SnapshotConcentrate, { amountMl, dilution }: MeasuredDose): Phrase[] {
  return [
    phrase('Look through the tank: a hand’s breadth deep it should be tinted, never a soup.'),
    phrase(`Shake ${bottle.name} gently; back into the cold at once.`),
    ...(dilution > 1
      ? [phrase(`Stir 1 mL of it into ${dilution - 1} mL of tank water: that is 1 in ${dilution}.`)]
      : []),
    phrase('Pour {amount} in near the air, a little at a time. Still green from yesterday? Give half.', {
      amount: mL(amountMl),
    }),
  ]
}

/** The bottle that feeds the batch's rotifers, else the room's only one. */
function bottleFor(snapshot: RoomSnapshot, batch: SnapshotBatch, date: string): SnapshotConcentrate | undefined {
  const ids = culturesFeeding(snapshot, batch, date).map(({ concentrateId }) => concentrateId)
  const linked = snapshot.concentrates.find(({ id }) => ids.includes(id))
  return linked ?? (snapshot.concentrates.length === 1 ? snapshot.concentrates[0] : undefined)
}
