'use client'

import { sentenceOf } from '@/base/api/problem.ts'
import { Button } from '@/base/ui/Button.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { useSignOut } from './queries.ts'

export function SignOutButton({ name }: { name: string }) {
  const signOut = useSignOut()
  const toast = useToast()
  return (
    <Button
      variant="subtle"
      isBusy={signOut.isPending}
      onClick={() =>
        signOut.mutate(undefined, {
          // The whole page goes, and with it all that was kept in memory of this person's rooms.
          onSuccess: () => window.location.assign('/sign-in'),
          onError: (error) => toast({ text: sentenceOf(error) }),
        })
      }
    >
      Sign out {name}
    </Button>
  )
}
