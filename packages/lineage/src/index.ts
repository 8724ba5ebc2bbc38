export { effectiveSize, inbreedingPerGeneration } from './effective-size.ts'
export { ArgumentError, PedigreeError, type PedigreeProblem } from './errors.ts'
export type { PedigreeEntry } from './pedigree.ts'
export { type FounderShare, offspringInbreeding, type Relationships, relationships } from './relationships.ts'
