import type { Command, Id } from '@fryward/shared'
import type { ProblemParts } from '@/base/api/problem.ts'

/** What was typed into a form, as typed, and when the last of it was. */
export type KeptDraft = { value: unknown; keptAt: string }

/** A command on the device, with what its person needs to find back to it. */
export type Queued = {
  command: Command
  personName: string
  /** What it is about, in a few words: a vessel's name, a task's title. */
  about: string
  /** Where in the dashboard it was meant. */
  path: string
  /** The form's place among the drafts, and what stood in it when it was sent. */
  draftKey?: string | undefined
  draft?: KeptDraft | undefined
  /** What the API said against it; it then stays here until it is corrected or dropped, and is not sent again. */
  refusal?: ProblemParts | undefined
}

/** Why what waits does not go out. */
export type Stuck = 'network' | 'server' | 'signed_out'

export const idOf = (queued: Queued): Id => queued.command.id
