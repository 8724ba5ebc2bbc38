-- CreateTable
CREATE TABLE "password_reset" (
    "id" UUID NOT NULL,
    "email" TEXT NOT NULL,
    "address" TEXT NOT NULL,
    "due_at" TIMESTAMPTZ(3),
    "user_id" TEXT,
    "token_hash" TEXT,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "password_reset_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "password_reset_token_hash_key" ON "password_reset"("token_hash");

-- CreateIndex
CREATE INDEX "password_reset_user_id_idx" ON "password_reset"("user_id");

-- CreateIndex
CREATE INDEX "password_reset_due_at_idx" ON "password_reset"("due_at");

-- AddForeignKey
ALTER TABLE "password_reset" ADD CONSTRAINT "password_reset_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE CASCADE ON UPDATE CASCADE;
