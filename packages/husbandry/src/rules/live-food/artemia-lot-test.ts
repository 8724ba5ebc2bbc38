import { HATCHING_TEST, hatchingTest } from '@fryward/live-feed'
import type { CountData, FieldProblem } from '@fryward/shared'
import { daysBetween } from '../../calendar/husbandry-day.ts'
import { middleRound } from '../../calendar/rounds.ts'
import { artemiaLotTestDefinition } from '../../definitions/live-food/artemia-lot-test.ts'
import { hatchVessels } from '../../plans/artemia-hatch.ts'
import { artemiaNeeds } from '../../plans/artemia-need.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { cultureById } from '../../snapshot/by-id.ts'
import { lastCare } from '../../state/care.ts'
import { dateOf } from '../../state/day-facts.ts'
import { countField } from '../../task/fields.ts'
import { degC, grams, mL, psu } from '../../task/measures.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { countOf, given } from '../../task/values.ts'

const samplesNeeded = 3
// Good cysts give 200,000-300,000 a gram (Treece 2000): 20 g a litre of them are some 5,000 a mL.
const densestPerMl = 10_000

const sample = { unit: 'per_mL', maximum: densestPerMl, volumeMl: HATCHING_TEST.sampleMl, replicates: 3 } as const

export const artemiaLotTest = defineRule(artemiaLotTestDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const vessel = cultureById(snapshot, subject.id)
    const vessels = hatchVessels(snapshot)
    // One tin feeds them all: it is tested at the first, once anybody eats of it.
    if (vessels[0]?.id !== vessel.id || artemiaNeeds(snapshot, day).length === 0) return []
    const last = vessels
      .flatMap(({ id }) => lastCare(snapshot, 'test_cysts', { subjectId: id, day }) ?? [])
      .sort((a, b) => (a.at < b.at ? -1 : 1))
      .at(-1)
    if (last && daysBetween(dateOf(snapshot, last.at), day.date) < parameters.everyDays) return []
    return [
      {
        roundId: middleRound(day).id,
        isForStandIn: false,
        content: taskContent({
          verb: 'test',
          title: titled('test', { thing: 'how well the tin hatches' }),
          steps: [
            phrase(
              'Started the day before: {cysts} of cysts into {water} of water of {salinity} at {warm}, light and strong air.',
              {
                cysts: grams(HATCHING_TEST.cystsG),
                water: mL(HATCHING_TEST.volumeMl),
                salinity: psu(33),
                warm: degC(28),
              },
            ),
            phrase('If none stands ready, start it now and leave the rest until this is asked again tomorrow.'),
            phrase('After a day stir well, take {one} of it into {rest} of water, and write 20 as the dilution.', {
              one: mL(1),
              rest: mL(19),
            }),
            phrase('A drop of iodine stills them. Count three samples of {sample} of that under the lens.', {
              sample: mL(HATCHING_TEST.sampleMl),
            }),
            phrase('In the same samples count those still in their shell or membrane: they say what per cent hatched.'),
          ],
          fields: [
            countField({ ...sample, name: 'nauplii', label: 'Nauplii', isRequired: true, likely: [1000, 7000] }),
            countField({ ...sample, name: 'unhatched', label: 'Not hatched', likely: [0, 7000] }),
          ],
          because: [
            last
              ? factLink(last, { label: 'last tested' })
              : settingLink(vessel.id, 'history', { label: 'not yet tested' }),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  check: (values) => {
    const [nauplii, unhatched] = [countOf(values, 'nauplii'), countOf(values, 'unhatched')]
    return [
      ...samplesMissing('nauplii', nauplii),
      ...notTheSame(nauplii, unhatched),
      ...nothingSeen(nauplii, unhatched),
    ]
  },
  record: ({ values, subjectId }) => {
    const nauplii = countOf(values, 'nauplii')
    if (!nauplii) return { facts: [] }
    const unhatched = countOf(values, 'unhatched')
    const counted = nauplii.animals.map((number, index) => ({
      nauplii: number,
      umbrella: 0,
      embryos: unhatched?.animals[index] ?? 0,
    }))
    const found = hatchingTest({
      samples: counted,
      volumeMl: HATCHING_TEST.volumeMl * (nauplii.dilution ?? 1),
      sampleMl: nauplii.volumeMl ?? HATCHING_TEST.sampleMl,
    })
    const told = unhatched ? `${Math.round(found.hatchingPercent)} % hatched.` : undefined
    return { facts: [test(subjectId, Math.round(found.naupliiPerGram / 1000) * 1000, told)] }
  },
})

const test = (subjectId: string, naupliiPerGram: number, note: string | undefined) =>
  ({ kind: 'care', subjectId, data: { act: 'test_cysts', naupliiPerGram, ...given({ note }) } }) as const

type Count = Omit<CountData, 'of'> | undefined

const samplesMissing = (name: string, count: Count): FieldProblem[] =>
  count && count.animals.length < samplesNeeded
    ? [{ path: `values.${name}`, message: `Three samples or more are needed: here are ${count.animals.length}.` }]
    : []

/** Cysts that hatched badly are still there to be seen: with none at all it was no test. */
function nothingSeen(nauplii: Count, unhatched: Count): FieldProblem[] {
  const seen = [...(nauplii?.animals ?? []), ...(unhatched?.animals ?? [])]
  if (!nauplii || seen.some((number) => number > 0)) return []
  const message = 'Nothing at all was seen. Stir well and take new samples, and count what did not hatch too.'
  return [{ path: 'values.nauplii', message }]
}

/** What did not hatch is counted in the very samples in which the nauplii were. */
function notTheSame(nauplii: Count, unhatched: Count): FieldProblem[] {
  if (!nauplii || !unhatched) return []
  const isSame =
    nauplii.animals.length === unhatched.animals.length &&
    nauplii.volumeMl === unhatched.volumeMl &&
    nauplii.dilution === unhatched.dilution
  if (isSame) return []
  const message = 'Count both in the same samples: as many of them, as many mL, and the same dilution.'
  return [{ path: 'values.unhatched', message }]
}
