import type { CommandBody, CommandId, CommandParams } from '@fryward/shared'

/** What a person means: the route's own parameters and body, with what finds the way back to it. */
export type Meant<K extends CommandId> = {
  params: CommandParams<K>
  body: CommandBody<K>
  /** What it is about, in a few words. */
  about?: string | undefined
  /** The page it was meant on, where it is not the address as it stands. */
  path?: string
  /** The draft it is made of. */
  draftKey?: string | undefined
  /** Told the share of its bytes that are on their way, 0 to 1. */
  onProgress?: (share: number) => void
}
