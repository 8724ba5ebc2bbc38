export {
  type EmbeddedPostgres,
  type EmbeddedPostgresOptions,
  findFreePort,
  startEmbeddedPostgres,
  stopEmbeddedPostgres,
} from './postgres/embedded-server.ts'
export { resetPassword } from './reset-password.ts'
export { parseSettings, type Settings, settingNames } from './settings.ts'
export { StartProblem } from './start-problem.ts'
export { ensureLocalCertificate } from './tls/local-authority.ts'
