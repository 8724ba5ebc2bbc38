import { changeSubject } from '../../frame/subject-row.ts'
import type { KindRules } from './kind-rules.ts'

/** What is meant with a clutch: whoever saw it as it was before must not change it unseen. */
export const decision: KindRules<'decision'> = {
  about: ['clutch'],
  onKept: async (work, { data }, { id, name }) => {
    await changeSubject(work, { id })
    work.audit({ action: 'clutch.change', subjectId: id, detail: { intent: data.intent }, why: `${name} was changed` })
  },
}
