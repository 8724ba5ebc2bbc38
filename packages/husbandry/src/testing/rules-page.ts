import { rulePieces, sayCode, sayQuantity, stationLabels, subjectLabels } from '@fryward/words'
import { type Parameter, type Parameters, sourceText } from '../rule/parameters.ts'
import type { Rule } from '../rule/rule.ts'

const voice = { units: 'metric', locale: 'en-GB' } as const

/** A parameter's default with its unit, as a metric room reads it. */
function defaultOf(parameter: Parameter): string {
  if (parameter.type === 'boolean') return parameter.default ? 'yes' : 'no'
  if (parameter.type === 'choice') return sayCode(parameter.default)
  if (parameter.unit === null) return String(parameter.default)
  return sayQuantity({ value: parameter.default, unit: parameter.unit }, voice)
}

/** The rule's sentence with its defaults in place: when it asks, and for how much. */
function sentenceOf({ sentence, parameters }: Rule): string {
  const listed = Object.entries(parameters as Parameters).map(([name, parameter]) => ({ name, parameter }))
  const wire = listed.map(({ name, parameter }) => ({
    ...{ name, unit: parameter.type === 'number' ? parameter.unit : null },
  }))
  return rulePieces({ sentence, parameters: wire as never }, 'metric')
    .map((piece) => {
      if (typeof piece === 'string') return piece
      const found = listed.find(({ name }) => name === piece.parameter.name)
      if (!found) throw new Error(`No parameter ${piece.parameter.name}`)
      const said = defaultOf(found.parameter)
      // Where the words say the unit, the number stands alone.
      return piece.unit === '' ? said.replace(/[^\d%]*$/, '') || said : said
    })
    .join('')
}

const rowOf = (parameter: Parameter): string =>
  `- ${defaultOf(parameter)}, ${parameter.label}: ${sourceText(parameter.source)}`

function sectionOf(rule: Rule): string {
  const { id, title, subject, station, isOnByDefault, parameters } = rule
  const rows = Object.values(parameters as Parameters).map(rowOf)
  return [
    `### ${title}`,
    `\`${id}\`, about a ${subjectLabels[subject].toLowerCase()}, at the station "${stationLabels[station]}"${isOnByDefault ? '' : ', off until a room switches it on'}.`,
    sentenceOf(rule),
    ...(rows.length > 0 ? [rows.join('\n')] : []),
  ].join('\n\n')
}

/** Every rule with what sets it off, how much it asks for and where each default comes from, in the order of a walk. */
export function rulesPage(rules: readonly Rule[]): string {
  return [
    '# The rules',
    'What a room is asked to do: when, how much, and where each number comes from. Defaults as they ship, in a metric room; a room may change every one of them. Written from the rules themselves, and held by a test:',
    '```sh\nnpx vitest run --project pure packages/husbandry/src/rules/rules-page.test.ts -u\n```',
    ...rules.map(sectionOf),
  ]
    .join('\n\n')
    .concat('\n')
}
