import type { Station, SubjectKind } from '@fryward/shared'
import type { Parameters } from './parameters.ts'

/** What a rule says of itself: data, so that plans, other rules and pages read it without the rule's drafting. */
export type RuleDefinition<P extends Parameters = Parameters> = {
  id: string
  title: string
  /** A sentence with `{parameter}` where a parameter stands. */
  sentence: string
  subject: SubjectKind
  station: Station
  isOnByDefault: boolean
  parameters: P
}
