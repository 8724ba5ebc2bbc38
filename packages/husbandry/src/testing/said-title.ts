import type { TaskContent } from '@fryward/shared'
import { sayTitle } from '@fryward/words'

/** A draft's title as its line says it, in litres and as the British write numbers. Left out of the build: only tests say anything. */
export const saidTitle = (draft: { content: Pick<TaskContent, 'title'> } | undefined): string =>
  draft ? sayTitle(draft.content.title, { units: 'metric', locale: 'en-GB' }) : 'no draft'
