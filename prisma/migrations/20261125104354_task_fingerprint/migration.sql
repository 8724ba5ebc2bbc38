-- AlterTable
ALTER TABLE "task" ADD COLUMN     "fingerprint" TEXT NOT NULL DEFAULT '';
