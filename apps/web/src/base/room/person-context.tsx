'use client'

import { createContext, useContext } from 'react'

/** Whoever is signed in, as pages need to know them. */
export type SignedIn = { id: string; name: string }

const PersonContext = createContext<SignedIn | null>(null)

export const PersonProvider = PersonContext

/** Who is signed in; null on pages that are open to strangers. */
export const usePerson = (): SignedIn | null => useContext(PersonContext)
