export * from './command.ts'
export { commandRouteIds, sentAtOnce } from './command-routes.ts'
