export { sweep, type TickLog, tick } from './tick.ts'
