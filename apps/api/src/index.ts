export { type ApiOptions, createApi } from './app.ts'
export { type ApiConfig, ApiConfigSchema, publicUrlOf, readConfig } from './config.ts'
export { version } from './version.ts'
