import type { Phrase } from '@fryward/shared'
import { z } from 'zod'
import { firstRound } from '../../calendar/rounds.ts'
import { larvalGreenWaterDefinition } from '../../definitions/larvae/larval-green-water.ts'
import { Gap } from '../../rule/gap.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { batchById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotConcentrate } from '../../snapshot/room-snapshot.ts'
import { factsOnDay, factsUntil } from '../../state/day-facts.ts'
import { culturesFeeding } from '../../state/feed-links.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { givenAmountField } from '../../task/fields.ts'
import { type MeasuredDose, measuredDose } from '../../task/measured-dose.ts'
import { litres, mL } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { also, titled } from '../../task/titles.ts'
import { numberOf } from '../../task/values.ts'

const ContextSchema = z.object({ concentrateId: z.string(), plannedMl: z.number(), dilution: z.number() })

export const larvalGreenWater = defineRule(larvalGreenWaterDefinition, {
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
          title: titled('give', { amount: mL(dose.amountMl), thing: what, details: [also('to green the water')] }),
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
