'use client'

import type { BodyInputOf } from '@fryward/shared'
import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useRef } from 'react'
import { call } from '@/base/api/call.ts'
import { newId } from '@/base/api/new-id.ts'
import { meOptions } from '@/parts/session/me.ts'

/** Sent at once or not at all; the same room asked for again after a lost answer is one room. */
export function useCreateRoom() {
  const queryClient = useQueryClient()
  const keys = useRef(new Map<string, string>())
  const keyOf = (text: string) => {
    const key = keys.current.get(text) ?? newId()
    keys.current.set(text, key)
    return key
  }
  return useMutation({
    mutationFn: (body: BodyInputOf<'createRoom'>) =>
      call('createRoom', { body, requestKey: keyOf(JSON.stringify(body)) }),
    onSuccess: () => queryClient.invalidateQueries({ queryKey: meOptions().queryKey }),
  })
}
