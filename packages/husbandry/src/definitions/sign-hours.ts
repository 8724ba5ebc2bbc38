import { commonPractice, type NumberParameter } from '../rule/parameters.ts'

/** For how long a sign that somebody ticked asks for a second look. */
export const signHoursParameter: NumberParameter = {
  type: 'number',
  label: 'that signs count for',
  unit: 'hours',
  default: 24,
  minimum: 6,
  maximum: 96,
  source: commonPractice('same-day signs lead'),
}
