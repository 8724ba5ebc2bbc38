-- AlterTable
ALTER TABLE "photo" ADD COLUMN     "shows" TEXT;
