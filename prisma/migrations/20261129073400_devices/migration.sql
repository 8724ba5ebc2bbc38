-- CreateEnum
CREATE TYPE "GaugeQuantity" AS ENUM ('temperature', 'salinity', 'ph', 'oxygen', 'redox', 'level');

-- CreateEnum
CREATE TYPE "AlarmKind" AS ENUM ('too_low', 'too_high', 'silent');

-- CreateTable
CREATE TABLE "device" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "created_by" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "last_seen_at" TIMESTAMPTZ(3),
    "revoked_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "device_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "gauge" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "device_id" UUID NOT NULL,
    "subject_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "quantity" "GaugeQuantity" NOT NULL,
    "offset" DOUBLE PRECISION NOT NULL DEFAULT 0,
    "low" DOUBLE PRECISION,
    "high" DOUBLE PRECISION,
    "for_minutes" INTEGER NOT NULL DEFAULT 10,
    "silent_after_minutes" INTEGER NOT NULL DEFAULT 30,
    "channel" INTEGER NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "gauge_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "alarm" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "gauge_id" UUID NOT NULL,
    "kind" "AlarmKind" NOT NULL,
    "raised_at" TIMESTAMPTZ(3) NOT NULL,
    "value" DOUBLE PRECISION,
    "acknowledged_at" TIMESTAMPTZ(3),
    "acknowledged_by" TEXT,
    "cleared_at" TIMESTAMPTZ(3),

    CONSTRAINT "alarm_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "device_token_hash_key" ON "device"("token_hash");

-- CreateIndex
CREATE UNIQUE INDEX "gauge_channel_key" ON "gauge"("channel");

-- CreateIndex
CREATE INDEX "gauge_room_id_subject_id_idx" ON "gauge"("room_id", "subject_id");

-- CreateIndex
CREATE UNIQUE INDEX "gauge_room_id_device_id_key_key" ON "gauge"("room_id", "device_id", "key");

-- CreateIndex
CREATE INDEX "alarm_room_id_raised_at_idx" ON "alarm"("room_id", "raised_at");

-- AddForeignKey
ALTER TABLE "device" ADD CONSTRAINT "device_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "gauge" ADD CONSTRAINT "gauge_room_id_device_id_fkey" FOREIGN KEY ("room_id", "device_id") REFERENCES "device"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "gauge" ADD CONSTRAINT "gauge_room_id_subject_id_fkey" FOREIGN KEY ("room_id", "subject_id") REFERENCES "subject"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "alarm" ADD CONSTRAINT "alarm_room_id_gauge_id_fkey" FOREIGN KEY ("room_id", "gauge_id") REFERENCES "gauge"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- One trouble of a gauge is one alarm, however many look.
CREATE UNIQUE INDEX "alarm_standing_key" ON "alarm"("room_id", "gauge_id") WHERE "cleared_at" IS NULL;
ALTER TABLE "gauge" ADD CONSTRAINT "gauge_band_check" CHECK ("low" IS NULL OR "high" IS NULL OR "low" < "high");

-- Readings: outside of Prisma, by gauge and time, a partition a month (made ahead by packages/readings), one behind for
-- what no month takes.
CREATE SCHEMA "telemetry";
CREATE TABLE "telemetry"."reading" (
    "channel" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "value" DOUBLE PRECISION NOT NULL,

    CONSTRAINT "reading_pkey" PRIMARY KEY ("channel", "at")
) PARTITION BY RANGE ("at");
CREATE TABLE "telemetry"."reading_behind" PARTITION OF "telemetry"."reading" DEFAULT;

-- An hour of a gauge. The sum and the number make means of any longer span.
CREATE TABLE "telemetry"."hour" (
    "channel" INTEGER NOT NULL,
    "hour" TIMESTAMPTZ(0) NOT NULL,
    "number" INTEGER NOT NULL,
    "sum" DOUBLE PRECISION NOT NULL,
    "low" DOUBLE PRECISION NOT NULL,
    "high" DOUBLE PRECISION NOT NULL,

    CONSTRAINT "hour_pkey" PRIMARY KEY ("channel", "hour")
);

-- Hours that have readings which their roll-up does not know yet.
CREATE TABLE "telemetry"."stale_hour" (
    "channel" INTEGER NOT NULL,
    "hour" TIMESTAMPTZ(0) NOT NULL,

    CONSTRAINT "stale_hour_pkey" PRIMARY KEY ("channel", "hour")
);
