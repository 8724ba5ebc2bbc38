export {
  type ApplyMigrationsOptions,
  applyMigrations,
  MigrationRefused,
  migrationsFolder,
} from './apply-migrations.ts'
