import { type ComponentType, lazy } from 'react'
import { untilLoaded } from './until-loaded.ts'

/** A component whose script comes after the page, however long that takes. `name` is what its module exports it as. */
export const late = <N extends string, P>(load: () => Promise<Record<N, ComponentType<P>>>, name: N) =>
  lazy(() => untilLoaded(load).then((part) => ({ default: part[name] })))
