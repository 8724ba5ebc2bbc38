'use client'

import { PasswordInput } from '@mantine/core'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { Card } from '@/base/ui/Page.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { useChangePassword } from '@/parts/account/queries.ts'

const nothingTyped = { current: '', wanted: '' }

export function PasswordForm() {
  const save = useChangePassword()
  const toast = useToast()
  const { draft, change } = useDraft(nothingTyped)
  const done = () => {
    change(nothingTyped)
    toast({ text: 'Changed. You are signed out everywhere else.' })
  }
  return (
    <Card>
      <Form
        submitLabel="Change the password"
        isBusy={save.isPending}
        error={save.error}
        onSubmit={() => save.mutate(draft, { onSuccess: done })}
      >
        <PasswordInput
          label="The password that you have now"
          autoComplete="current-password"
          visibilityToggleButtonProps={{ 'aria-label': 'Show or hide the password that you have now' }}
          value={draft.current}
          onChange={(event) => change({ current: event.currentTarget.value })}
        />
        <PasswordInput
          label="The new one"
          description="At least 10 characters; four words that do not belong together do well"
          autoComplete="new-password"
          visibilityToggleButtonProps={{ 'aria-label': 'Show or hide the new password' }}
          value={draft.wanted}
          onChange={(event) => change({ wanted: event.currentTarget.value })}
        />
      </Form>
    </Card>
  )
}
