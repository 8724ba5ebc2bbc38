-- AlterTable
ALTER TABLE "session" ADD COLUMN     "confirmed_at" TIMESTAMPTZ(3);

-- CreateTable
CREATE TABLE "used_code" (
    "user_id" TEXT NOT NULL,
    "code_hash" TEXT NOT NULL,
    "used_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "used_code_pkey" PRIMARY KEY ("user_id","code_hash")
);

-- AddForeignKey
ALTER TABLE "used_code" ADD CONSTRAINT "used_code_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE CASCADE ON UPDATE CASCADE;
