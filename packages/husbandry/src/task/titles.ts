import type { Deed, Title, TitleDestination, TitleDetail } from '@fryward/shared'

/** What a task's line says, in parts; packages/words puts them into a sentence. */
export const titled = (deed: Deed, parts: Partial<Omit<Title, 'deed'>> = {}): Title => ({
  deed,
  amount: null,
  thing: null,
  from: null,
  to: [],
  details: [],
  ...parts,
})

/** Another thing done with it: "walls brushed". */
export const also = (words: string): TitleDetail => ({ kind: 'with', words })

/** Which of the day's feeds this is; nothing where there is only one. */
export const whichFeed = (index: number, total: number): TitleDetail[] =>
  total > 1 ? [{ kind: 'feed', number: index + 1, of: total }] : []

/** Where each part goes: a vessel by its name, or one of the ways that have none. */
export const destinationsOf = (parts: readonly { to: string; name: string }[]): TitleDestination[] =>
  parts.map(({ to, name }) =>
    to === 'other_fish' || to === 'chilled_reserve' || to === 'drain' ? { way: to } : { name },
  )
