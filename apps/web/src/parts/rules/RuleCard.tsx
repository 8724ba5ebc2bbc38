'use client'

import type { Rule } from '@fryward/shared'
import { sayDate, toPlainDate } from '@fryward/words'
import { FormProblem } from '@/base/forms/Form.tsx'
import { Switch } from '@/base/forms/Switch.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { StillWaiting } from '@/base/outbox/StillWaiting.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { PreviewText } from './PreviewText.tsx'
import { useChangeRule, usePreviewRule } from './queries.ts'
import { RuleSentence } from './RuleSentence.tsx'
import { RuleSources } from './RuleSources.tsx'
import { readRule, startParameters } from './rule-draft.ts'
import styles from './rules.module.css'

/** One rule: its sentence with the numbers as fields, what tomorrow would be, then the save. */
export function RuleCard({ rule, isTarget = false }: { rule: Rule; isTarget?: boolean }) {
  const voice = useVoice()
  const room = useRoom()
  const may = useMay('manage')
  const preview = usePreviewRule(room.id, rule.id)
  const start = startParameters(rule, room)
  const typed = useDraft({ isOn: rule.isOn, drafts: start }, `rule/${rule.id}`)
  const { isOn, drafts } = typed.draft
  const save = useChangeRule(room.id, rule.id, { draftKey: typed.draftKey, about: rule.title })
  const { body, errors } = readRule(rule, isOn, drafts, room)
  const isChanged = isOn !== rule.isOn || JSON.stringify(drafts) !== JSON.stringify(start)
  const touch = () => preview.reset()
  const back = () => {
    typed.reset()
    preview.reset()
    save.reset()
  }
  return (
    <article
      id={rule.id}
      className={styles.rule}
      data-off={!rule.isOn || undefined}
      data-target={isTarget || undefined}
      aria-labelledby={`${rule.id}-title`}
    >
      <div className={styles.ruleHead}>
        <h3 id={`${rule.id}-title`}>{rule.title}</h3>
        {may ? (
          <Switch
            label={`${rule.title}: on`}
            isOn={isOn}
            onSwitch={(next) => {
              touch()
              typed.change({ isOn: next })
            }}
          />
        ) : (
          !rule.isOn && <span className={styles.off}>off</span>
        )}
      </div>
      <RuleSentence
        rule={rule}
        drafts={drafts}
        isReadOnly={!may}
        onDraft={(name, value) => {
          touch()
          typed.change({ drafts: { ...drafts, [name]: value } })
        }}
      />
      {Object.entries(errors).map(([name, error]) => (
        <p key={name} className={styles.error} role="alert">
          {error}
        </p>
      ))}
      {may && isChanged && (
        <div className={styles.actions}>
          {preview.data && <PreviewText preview={preview.data} />}
          <FormProblem error={save.error ?? preview.error} />
          {save.isPending && <StillWaiting />}
          {preview.data ? (
            <Button variant="filled" isBusy={save.isPending} onClick={() => save.mutate(body)}>
              Save the rule
            </Button>
          ) : (
            <Button
              variant="filled"
              isBusy={preview.isPending}
              disabled={Object.keys(errors).length > 0}
              onClick={() => preview.mutate(body)}
            >
              See what tomorrow would change
            </Button>
          )}
          <Button variant="subtle" onClick={back}>
            Leave it as it was
          </Button>
        </div>
      )}
      {rule.changedByName && rule.changedAt && (
        <Notice>
          Changed by {rule.changedByName} on {sayDate(toPlainDate(rule.changedAt, room.timeZone), voice)}
        </Notice>
      )}
      <RuleSources rule={rule} />
    </article>
  )
}
