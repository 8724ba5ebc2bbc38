import { lastRound } from '../../calendar/rounds.ts'
import { quarantineWatchDefinition } from '../../definitions/quarantine/quarantine-watch.ts'
import type { FactDraft } from '../../facts/fact.ts'
import { defineRule } from '../../rule/rule.ts'
import { factLink, settingLink } from '../../rule/why.ts'
import { tankById } from '../../snapshot/by-id.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { holdsFish } from '../../state/tank-fish.ts'
import { fishWaterCautions, medicineCautions } from '../../task/cautions.ts'
import { choiceField, choicesField, noteField, numberField, textField } from '../../task/fields.ts'
import { phrase, taskContent } from '../../task/phrases.ts'
import { titled } from '../../task/titles.ts'
import { choiceOf, choicesOf, numberOf, textOf, type Values } from '../../task/values.ts'

const sickSigns = ['spots_or_wounds', 'gasping', 'not_eating', 'fighting'] as const

const fishAges = ['adults', 'juveniles'] as const

export const quarantineWatch = defineRule(quarantineWatchDefinition, {
  draft: ({ snapshot, day, subject, parameters, parameter }) => {
    const tank = tankById(snapshot, subject.id)
    if (tank.kind !== 'quarantine' || !holdsFish(snapshot, tank, day)) return []
    const last = factsUntil(snapshot, 'observation', { subjectId: tank.id, until: day.endsAt }).at(-1)
    const since = daysSince(snapshot, last, day.date)
    if (since !== null && since < parameters.everyDays) return []
    const general = medicineCautions.at(-1)
    return [
      {
        roundId: lastRound(day).id,
        content: taskContent({
          verb: 'look',
          title: titled('watch', { thing: 'the fish' }),
          steps: [
            phrase('Last of all, with its own net, hose and towel; wash hands and arms afterwards.'),
            phrase('Breathing, skin, fins, droppings, appetite. Compare with what was written yesterday.'),
            phrase('A treatment as it was prescribed: product, dose, by whom, what it did.'),
          ],
          cautions: [...fishWaterCautions.filter((caution) => caution !== general), ...medicineCautions],
          fields: [
            choicesField({
              name: 'signs',
              label: 'Anything off?',
              choices: [
                { value: 'spots_or_wounds', label: 'spots or wounds' },
                { value: 'gasping', label: 'gasping' },
                { value: 'not_eating', label: 'not eating' },
                { value: 'fighting', label: 'fighting' },
              ],
            }),
            numberField({
              name: 'dead',
              label: 'Dead fish',
              unit: 'animals',
              minimum: 0,
              maximum: 10_000,
              likely: [0, 5],
            }),
            choiceField({
              name: 'deadOf',
              label: 'The dead were',
              help: 'Adults when left empty.',
              choices: fishAges.map((value) => ({ value, label: value })),
            }),
            textField({ name: 'product', label: 'Treated with: product as written' }),
            textField({ name: 'dose', label: 'Dose as written' }),
            textField({ name: 'prescribedBy', label: 'Prescribed by' }),
            noteField('What you saw'),
          ],
          because: [
            settingLink(tank.id, 'kind', { label: 'kind of tank', text: 'quarantine' }),
            ...(last ? [factLink(last, { label: 'last watched', joins: 'and' as const })] : []),
            parameter('everyDays', 'and'),
          ],
        }),
        context: {},
      },
    ]
  },
  record: ({ values, subjectId }) => {
    const signs = choicesOf(values, 'signs', sickSigns)
    const dead = Math.round(numberOf(values, 'dead') ?? 0)
    const note = textOf(values, 'note')
    const isWell = signs.length === 0 && dead === 0
    const seen: FactDraft = {
      kind: 'observation',
      subjectId,
      data: { signs: isWell ? ['all_well'] : signs, note: note ?? (isWell || signs.length > 0 ? '' : 'Watched.') },
    }
    const losses: FactDraft[] =
      dead > 0
        ? [{ kind: 'loss', subjectId, data: { number: dead, of: choiceOf(values, 'deadOf', fishAges) ?? 'adults' } }]
        : []
    return { facts: [seen, ...losses, ...treatmentOf(subjectId, values)] }
  },
})

/** A treatment is kept as written once product, dose and prescriber are all named; before that it is a note. */
function treatmentOf(subjectId: string, values: Values): FactDraft[] {
  const product = textOf(values, 'product')
  const dose = textOf(values, 'dose')
  const prescribedBy = textOf(values, 'prescribedBy')
  if (product && dose && prescribedBy) return [{ kind: 'treatment', subjectId, data: { product, dose, prescribedBy } }]
  const told = [product, dose, prescribedBy].filter(Boolean).join(', ')
  return told ? [{ kind: 'observation', subjectId, data: { note: `Treatment, not complete: ${told}` } }] : []
}
