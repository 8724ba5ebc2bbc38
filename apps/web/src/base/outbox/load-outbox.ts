import { untilLoaded } from '@/base/ui/until-loaded.ts'

const load = () => import('./lazy.ts')

/** This page's outbox; its script comes after the page. What is tapped before waits for it. */
export const loadOutbox = () => untilLoaded(load)
