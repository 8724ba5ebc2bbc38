export {
  type EmbeddedPostgres,
  type EmbeddedPostgresOptions,
  findFreePort,
  startEmbeddedPostgres,
  stopEmbeddedPostgres,
} from './postgres/embedded-server.ts'
export { StartProblem } from './start-problem.ts'
