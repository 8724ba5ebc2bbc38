import type * as z from 'zod/mini'

type Issue = z.core.$ZodRawIssue

/**
 * What is wanted instead of a value that was refused, as an answer to "give …": a validator's own words ("Invalid UUID",
 * "expected int") tell nobody what to do. Checks that know better say their own.
 */
export function wantedInstead(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `${kinds[issue.expected] ?? 'what the description of the API asks for'}${issue.input === undefined ? ', which was left out' : ''}`
    case 'too_small':
      return amountOf(issue.origin, issue.inclusive === false ? 'more than' : 'at least', issue.minimum)
    case 'too_big':
      return amountOf(issue.origin, issue.inclusive === false ? 'less than' : 'at most', issue.maximum)
    case 'invalid_format':
      return formats[issue.format] ?? 'a text in the form that the description of the API shows'
    case 'invalid_value':
      return issue.values.length === 1 ? String(issue.values[0]) : `one of: ${issue.values.map(String).join(', ')}`
    case 'unrecognized_keys':
      return `no ${issue.keys.map((key) => `"${key}"`).join(', ')}, which has no meaning here`
    case 'not_multiple_of':
      return `a multiple of ${issue.divisor}`
    default:
      return 'one of the forms that the description of the API shows'
  }
}

/** What was refused, as a sentence that says what to do. */
export const askFor = (wanted: string): string => `Give ${wanted}.`

const kinds: Record<string, string> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'an object with its fields',
  record: 'an object with its fields',
  undefined: 'nothing here',
  null: 'nothing here',
}

const formats: Record<string, string> = {
  uuid: 'an id as this service gave it',
  datetime: 'an instant in UTC such as 2026-11-26T07:40:00Z',
  date: 'a date such as 2026-11-26',
  email: 'an email address such as ana@example.org',
  safeint: 'a whole number',
  int32: 'a whole number',
}

/** Lengths of texts and lists, and sizes of numbers. */
function amountOf(origin: string, bound: string, limit: number | bigint): string {
  if (origin === 'string') return `a text of ${bound} ${limit} ${limit === 1 ? 'character' : 'characters'}`
  if (origin === 'array' || origin === 'set') return `a list of ${bound} ${limit}`
  return `a number of ${bound} ${limit}`
}
