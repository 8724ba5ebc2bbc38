export { createHandOver } from './hand-over.ts'
export { beat } from './heartbeat.ts'
export { sweep, tick } from './tick.ts'
export type { TickLog } from './tick-log.ts'
