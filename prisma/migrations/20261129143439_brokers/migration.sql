-- AlterTable
ALTER TABLE "device" ADD COLUMN     "topic" TEXT;

-- CreateTable
CREATE TABLE "broker" (
    "room_id" UUID NOT NULL,
    "url" TEXT NOT NULL,
    "username" TEXT,
    "authority" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "is_connected" BOOLEAN NOT NULL DEFAULT false,
    "last_connected_at" TIMESTAMPTZ(3),
    "trouble" TEXT,
    "trouble_at" TIMESTAMPTZ(3),

    CONSTRAINT "broker_pkey" PRIMARY KEY ("room_id")
);

-- CreateTable
CREATE TABLE "broker_password" (
    "room_id" UUID NOT NULL,
    "sealed" TEXT NOT NULL,

    CONSTRAINT "broker_password_pkey" PRIMARY KEY ("room_id")
);

-- CreateTable
CREATE TABLE "broker_refusal" (
    "room_id" UUID NOT NULL,
    "topic" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "detail" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "last_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "broker_refusal_pkey" PRIMARY KEY ("room_id","topic","reason")
);

-- CreateIndex
CREATE INDEX "broker_refusal_room_id_last_at_idx" ON "broker_refusal"("room_id", "last_at");

-- AddForeignKey
ALTER TABLE "broker" ADD CONSTRAINT "broker_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "broker_password" ADD CONSTRAINT "broker_password_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "broker_refusal" ADD CONSTRAINT "broker_refusal_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Among the devices of a room that are let in; one that was taken out leaves its topic.
CREATE UNIQUE INDEX "device_topic_key" ON "device"("room_id", "topic") WHERE "revoked_at" IS NULL;
