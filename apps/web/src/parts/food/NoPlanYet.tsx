import { Notice } from '@/base/ui/Notice.tsx'

export const NoPlanYet = () => (
  <Notice title="No plan yet">
    <p>It is being worked out, and comes within a minute. Nothing waits for it: the list goes on as it is.</p>
  </Notice>
)
