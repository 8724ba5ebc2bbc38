-- AlterTable
ALTER TABLE "user" ADD COLUMN     "two_factor_enabled" BOOLEAN DEFAULT false;

-- AlterTable
ALTER TABLE "room" ADD COLUMN     "asks_second_factor" BOOLEAN NOT NULL DEFAULT false;

-- CreateTable
CREATE TABLE "two_factor" (
    "id" TEXT NOT NULL,
    "user_id" TEXT NOT NULL,
    "secret" TEXT NOT NULL,
    "backup_codes" TEXT NOT NULL,
    "verified" BOOLEAN DEFAULT true,
    "failed_verification_count" INTEGER DEFAULT 0,
    "locked_until" TIMESTAMPTZ(3),

    CONSTRAINT "two_factor_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sign_in_try" (
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "email" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "browser" TEXT NOT NULL DEFAULT '',
    "outcome" TEXT NOT NULL,
    "is_known" BOOLEAN NOT NULL,

    CONSTRAINT "sign_in_try_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "two_factor_user_id_idx" ON "two_factor"("user_id");

-- CreateIndex
CREATE INDEX "sign_in_try_email_at_idx" ON "sign_in_try"("email", "at" DESC);

-- CreateIndex
CREATE INDEX "sign_in_try_at_idx" ON "sign_in_try"("at");

-- AddForeignKey
ALTER TABLE "two_factor" ADD CONSTRAINT "two_factor_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE CASCADE ON UPDATE CASCADE;
