'use client'

import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { Doorway } from '@/parts/doorway/Doorway.tsx'
import { CodeField } from '@/parts/session/CodeField.tsx'
import { useSignInWithCode } from '@/parts/session/queries.ts'

/** The second step of somebody with a second factor; a recovery code does too. */
export function CodeStep({ onDone, onBack }: { onDone: () => void; onBack: () => void }) {
  const confirm = useSignInWithCode()
  const [code, setCode] = useState('')
  return (
    <Doorway title="One more step">
      <Form
        submitLabel="Sign in"
        isBusy={confirm.isPending}
        error={confirm.error}
        onSubmit={() => confirm.mutate(code, { onSuccess: onDone })}
        onCancel={onBack}
      >
        <CodeField code={code} onCode={setCode} hasFocus />
      </Form>
    </Doorway>
  )
}
