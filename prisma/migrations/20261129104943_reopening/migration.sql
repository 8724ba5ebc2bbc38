-- AlterTable
ALTER TABLE "subject" ADD COLUMN     "reopened_revision" INTEGER;
