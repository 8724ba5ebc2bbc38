-- AlterEnum
ALTER TYPE "FactKind" ADD VALUE 'water_reading';

-- AlterEnum


ALTER TYPE "AlarmKind" ADD VALUE 'too_fast';
ALTER TYPE "AlarmKind" ADD VALUE 'implausible';
ALTER TYPE "AlarmKind" ADD VALUE 'stuck';

-- AlterTable
ALTER TABLE "gauge" ADD COLUMN     "implausible_at" TIMESTAMPTZ(3),
ADD COLUMN     "max_per_hour" DOUBLE PRECISION,
ADD COLUMN     "noted_until" TIMESTAMPTZ(3),
ADD COLUMN     "noted_value" DOUBLE PRECISION,
ADD COLUMN     "stuck_after_hours" INTEGER DEFAULT 24;
