-- AlterEnum
ALTER TYPE "FactKind" ADD VALUE 'cure';

-- AlterTable
ALTER TABLE "culture" ADD COLUMN     "air_line" TEXT,
ADD COLUMN     "shelf" TEXT,
ADD COLUMN     "tools" TEXT;
