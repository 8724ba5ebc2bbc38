import { FEMALES_NEEDED } from '@fryward/live-feed'
import type { Phrase } from '@fryward/shared'
import type { FactDraft } from '../../facts/fact.ts'
import { animals } from '../../task/measures.ts'
import { phrase } from '../../task/phrases.ts'
import { countOf, type Values } from '../../task/values.ts'
import { signFacts } from './culture-signs.ts'

export const sampleMl = 1
// No culture has been held denser than 160,000 per mL: Yoshimura, Tanaka & Yoshimatsu 2003, Aquaculture 227:165-172.
export const densestPerMl = 160_000

export const eggSteps = (): Phrase[] => [
  phrase('Look at {females}, all of them adult females, and count the eggs they carry: fewer say too little.', {
    females: animals(FEMALES_NEEDED),
  }),
  phrase('Note at once if they swim slowly, smell, sink or clump, or if there is foam.'),
]

/** What a count of a culture found, with the signs that were seen. */
export function sampleFacts(subjectId: string, values: Values): FactDraft[] {
  const count = countOf(values, 'count')
  const counted: FactDraft[] = count ? [{ kind: 'count', subjectId, data: { of: 'culture', ...count } }] : []
  return [...counted, ...signFacts(subjectId, values)]
}
