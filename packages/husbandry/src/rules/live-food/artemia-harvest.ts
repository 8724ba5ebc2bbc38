import { artemiaHatchHours, COLD_STORE } from '@fryward/live-feed'
import type { TaskField } from '@fryward/shared'
import { z } from 'zod'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { artemiaHarvestDefinition } from '../../definitions/live-food/artemia-harvest.ts'
import { harvestDue, noneOut } from '../../plans/artemia-hatch.ts'
import { defineRule } from '../../rule/rule.ts'
import { computedLink, factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot/room-snapshot.ts'
import { factsUntil } from '../../state/day-facts.ts'
import { choiceField, countField, noteField, numberField } from '../../task/fields.ts'
import { degC, hours, mL } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { countOf, given, numberOf, textOf } from '../../task/values.ts'

const ContextSchema = z.object({ volumeL: z.number() })
// Screen under 150 um, kept under water: FAO Fish. Tech. Pap. 361, sect. 4.3.1.
const screenUm = 150

// A drop of a pipette. common practice
const sampleMl = 0.1
// Twice what is kept in the cold at most, 8 million a litre (COLD_STORE), and the thinnest jar worth a syringe.
const densestPerMl = 16_000
const likelyPerMl = [100, 8000] as const

const outField: TaskField = choiceField({
  name: 'out',
  label: 'Are they out?',
  help: 'Yes when left empty.',
  choices: [
    { value: 'yes', label: 'yes' },
    { value: 'none', label: 'none yet' },
  ],
})

/** How dense the jar is, so that feeds are told in mL. */
const jarField: TaskField = countField({
  name: 'count',
  label: 'Nauplii in the jar',
  unit: 'per_mL',
  maximum: densestPerMl,
  likely: likelyPerMl,
  volumeMl: sampleMl,
})

/** How much of it there is, so that a hatch is learned from and no feed is promised what is gone. */
const keptField = (usual: number | null): TaskField =>
  numberField({
    ...{ name: 'keptMl', label: 'Jar filled up to', unit: 'mL', usual, step: 10 },
    ...{ minimum: 10, maximum: 20_000, likely: [100, 2000] },
  })

const lastKeptMl = (snapshot: RoomSnapshot, vessel: SnapshotCulture, day: HusbandryDay): number | null =>
  factsUntil(snapshot, 'harvest', { subjectId: vessel.id, until: day.endsAt }).findLast(
    ({ data }) => data.keptMl !== undefined,
  )?.data.keptMl ?? null

export const artemiaHarvest = defineRule(artemiaHarvestDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const vessel = cultureById(snapshot, subject.id)
    if (vessel.kind !== 'artemia_hatch') return []
    const due = harvestDue(snapshot, vessel, day)
    if (!due) return []
    const { started, looks, round, at } = due
    const { hours: hatchHours } = artemiaHatchHours({ temperatureC: vessel.temperatureC })
    return [
      {
        roundId: round.id,
        ordinal: looks.length + 1,
        dueAt: at,
        lateAfterMinutes: 90,
        content: taskContent({
          verb: 'harvest',
          title: titled('harvest', { thing: 'the nauplii' }),
          steps: [
            phrase('None out yet? Say so, and leave them under air and light: you are sent again with the next round.'),
            phrase('They are out: what is left of an older harvest goes down the drain; scald the jar and rinse it.'),
            phrase('Air off, light at the bottom, five to ten minutes: no longer, they use up the air.'),
            phrase('Draw them off from the bottom; unhatched cysts lie lowest, shells float: leave both.'),
            phrase('Through a screen under {screen}, kept under water; rinse until it runs clear.', {
              screen: { value: screenUm, unit: 'um' },
            }),
            phrase(
              'What is not fed now: under {cold} with gentle air, at most {hours}, never denser than 8 million a litre.',
              {
                cold: degC(COLD_STORE.belowC),
                hours: hours(parameters.coldHours),
              },
            ),
            phrase('Fill the jar up to a mark and note its mL: then no more is asked of it than it holds.'),
            phrase(
              'Stir the jar and count three drops of {sample}: every feed of the day is measured by that number.',
              {
                sample: mL(sampleMl),
              },
            ),
            phrase('Too many to count? A mL of it into 99 mL of water, and write 100 as the dilution.'),
          ],
          fields: [outField, jarField, keptField(lastKeptMl(snapshot, vessel, day)), noteField('Hatched well?')],
          because: [
            factLink(started, { label: 'cysts started', text: started.data.note ?? null }),
            settingLink(vessel.id, 'temperature', {
              label: 'in it',
              quantity: degC(vessel.temperatureC),
              joins: 'and',
            }),
            computedLink('hatching time by temperature', 'about 24 h at 28 °C: general literature (from memory)', {
              label: 'to hatch',
              quantity: hours(Number(hatchHours.toFixed(1))),
              joins: 'and',
            }),
            parameter('coldHours', 'and'),
          ],
        }),
        context: { volumeL: vessel.volumeL },
      },
    ]
  },
  check: (values) =>
    textOf(values, 'out') === 'none' && (countOf(values, 'count')?.animals ?? []).some((each) => each > 0)
      ? [{ path: 'values.out', message: 'Nauplii were counted: say that they are out, or clear the count.' }]
      : [],
  record: ({ context, values, subjectId }) => {
    const { volumeL } = ContextSchema.parse(context)
    const note = textOf(values, 'note')
    const count = countOf(values, 'count')
    if (textOf(values, 'out') === 'none') {
      const said = [noneOut, note ?? ''].join(' ').trim()
      return { facts: [{ kind: 'observation', subjectId, data: { note: said } }] }
    }
    const keptMl = numberOf(values, 'keptMl')
    return {
      facts: [
        {
          kind: 'harvest',
          subjectId,
          data: { volumeL, parts: [{ to: 'chilled_reserve', volumeL }], ...given({ keptMl }) },
        },
        ...(count ? [{ kind: 'count', subjectId, data: { of: 'culture', ...count } } as const] : []),
        ...(note ? [{ kind: 'observation', subjectId, data: { note } } as const] : []),
      ],
    }
  },
})
