'use client'

import { Button } from '@mantine/core'
import { sentenceOf } from '@/api/problem.ts'
import { useToast } from '@/ui/toast.tsx'
import { useSignOut } from './queries.ts'

export function SignOutButton({ name }: { name: string }) {
  const signOut = useSignOut()
  const toast = useToast()
  return (
    <Button
      variant="subtle"
      loading={signOut.isPending}
      onClick={() =>
        signOut.mutate(undefined, {
          onSuccess: () => window.location.assign('/sign-in'),
          onError: (error) => toast({ text: sentenceOf(error) }),
        })
      }
    >
      Sign out {name}
    </Button>
  )
}
