-- AlterTable
ALTER TABLE "tank" ADD COLUMN     "light_hours" DOUBLE PRECISION;
