import { useSyncExternalStore } from 'react'

const onNothing = () => () => undefined

/** False on the server and while its HTML waits for the script; true from then on. */
export const useIsHydrated = (): boolean =>
  useSyncExternalStore(
    onNothing,
    () => true,
    () => false,
  )
