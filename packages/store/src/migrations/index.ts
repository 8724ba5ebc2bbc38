export {
  type ApplyMigrationsOptions,
  applyMigrations,
  migrationsFolder,
} from './apply-migrations.ts'
