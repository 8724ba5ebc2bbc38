-- CreateEnum
CREATE TYPE "CultureEndCause" AS ENUM ('crashed', 'contaminated', 'retired', 'moved');

-- AlterTable
ALTER TABLE "culture" ADD COLUMN     "end_cause" "CultureEndCause";
