import type { TaskField } from '@fryward/shared'

const figures = (value: number): number => Number(value.toPrecision(4))
const isId = (value: string): boolean => value.length === 36

/** A field of a form in one line: what may be typed, what is taken without a question, and whether it must be said. */
export const saidField = (field: TaskField): string =>
  `${field.name}: ${saidKind(field)}${field.isRequired ? ', required' : ''}`

function saidKind(field: TaskField): string {
  switch (field.type) {
    case 'number':
      return `${saidRange(field)}, by ${field.step}${saidUsual(field)}`
    case 'count': {
      const eggs = field.withEggs ? ' with their eggs' : ''
      return `${saidRange(field)}, ${field.replicates} x ${field.volumeMl} mL${eggs}${saidUsual(field)}`
    }
    case 'choice':
      return `one of ${saidChoices(field)}`
    case 'choices':
      return `any of ${saidChoices(field)}`
    case 'yes_no':
      return 'yes or no'
    case 'text':
      return 'words'
    case 'parts': {
      const parts = field.suggested.map(({ to, volumeL }) => `${volumeL} L ${to}`).join(', ')
      return `up to ${field.maximumL} L, likely up to ${figures(field.likelyMaximumL)}, suggested ${parts}`
    }
  }
}

const saidRange = (field: TaskField & { type: 'number' | 'count' }): string => {
  const { unit, minimum, maximum, likelyMinimum, likelyMaximum } = field
  const [from, to, likelyFrom, likelyTo] = [minimum, maximum, likelyMinimum, likelyMaximum].map(figures)
  return `${from} to ${to} ${unit ?? 'of them'}, likely ${likelyFrom} to ${likelyTo}`
}

const saidUsual = ({ usual }: { usual: number | null }): string => (usual === null ? '' : `, usual ${figures(usual)}`)

/** In their order; things of the room by their name. */
const saidChoices = ({ choices }: TaskField & { type: 'choice' | 'choices' }): string =>
  choices.map(({ value, label }) => (isId(value) ? label : value)).join(', ')
