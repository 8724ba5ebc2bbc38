-- AlterEnum
ALTER TYPE "FactKind" ADD VALUE 'decision';
