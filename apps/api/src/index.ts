export { type ApiOptions, createApi } from './app.ts'
export { type ApiConfig, ApiConfigSchema, readConfig } from './config.ts'
export { version } from './version.ts'
