-- CreateEnum
CREATE TYPE "MessageOccasion" AS ENUM ('raised', 'over', 'trial');

-- CreateEnum
CREATE TYPE "MessageWay" AS ENUM ('push', 'mail', 'webhook');

-- CreateEnum
CREATE TYPE "MessageState" AS ENUM ('waiting', 'claimed', 'sent', 'failed', 'unknown', 'withdrawn');

-- AlterTable
ALTER TABLE "membership" ADD COLUMN     "alarms_by_mail" BOOLEAN NOT NULL DEFAULT true;

-- AlterTable
ALTER TABLE "alarm" ADD COLUMN     "handed_to" TEXT,
ADD COLUMN     "quiet_until" TIMESTAMPTZ(3);

-- CreateTable
CREATE TABLE "push_phone" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "user_id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "endpoint" TEXT NOT NULL,
    "p256dh" TEXT NOT NULL,
    "auth" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "push_phone_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "webhook" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "url" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "webhook_pkey" PRIMARY KEY ("room_id")
);

-- CreateTable
CREATE TABLE "message" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "occasion" "MessageOccasion" NOT NULL,
    "alarm_id" UUID,
    "ordinal" INTEGER NOT NULL DEFAULT 0,
    "way" "MessageWay" NOT NULL,
    "user_id" TEXT,
    "address" TEXT NOT NULL,
    "state" "MessageState" NOT NULL DEFAULT 'waiting',
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "due_at" TIMESTAMPTZ(3) NOT NULL,
    "claimed_at" TIMESTAMPTZ(3),
    "ended_at" TIMESTAMPTZ(3),
    "tries" INTEGER NOT NULL DEFAULT 0,
    "detail" TEXT,

    CONSTRAINT "message_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateIndex
CREATE INDEX "push_phone_room_id_user_id_idx" ON "push_phone"("room_id", "user_id");

-- CreateIndex
CREATE UNIQUE INDEX "push_phone_room_id_endpoint_key" ON "push_phone"("room_id", "endpoint");

-- CreateIndex
CREATE UNIQUE INDEX "webhook_id_key" ON "webhook"("id");

-- CreateIndex
CREATE INDEX "message_room_id_created_at_idx" ON "message"("room_id", "created_at");

-- AddForeignKey
ALTER TABLE "push_phone" ADD CONSTRAINT "push_phone_room_id_user_id_fkey" FOREIGN KEY ("room_id", "user_id") REFERENCES "membership"("room_id", "user_id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "webhook" ADD CONSTRAINT "webhook_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "message" ADD CONSTRAINT "message_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "message" ADD CONSTRAINT "message_room_id_alarm_id_fkey" FOREIGN KEY ("room_id", "alarm_id") REFERENCES "alarm"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- However many schedulers look, an alarm is told once each time to one address.
CREATE UNIQUE INDEX "message_once_key" ON "message"("room_id", "alarm_id", "occasion", "ordinal", "way", "address");
-- What is looked for each minute: messages on their way.
CREATE INDEX "message_on_its_way_idx" ON "message"("due_at") WHERE "state" IN ('waiting', 'claimed');
