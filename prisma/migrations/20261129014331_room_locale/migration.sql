-- AlterTable
ALTER TABLE "room" ADD COLUMN     "locale" TEXT NOT NULL DEFAULT 'en-GB';
