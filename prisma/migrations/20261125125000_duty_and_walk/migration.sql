-- AlterTable
ALTER TABLE "room" ADD COLUMN     "station_order" TEXT[] DEFAULT ARRAY['microalgae', 'live_food', 'larvae', 'juveniles', 'broodstock', 'quarantine', 'room']::TEXT[];

-- CreateTable
CREATE TABLE "duty" (
    "room_id" UUID NOT NULL,
    "on_date" DATE NOT NULL,
    "user_id" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "duty_pkey" PRIMARY KEY ("room_id","on_date")
);

-- CreateIndex
CREATE INDEX "duty_room_id_user_id_idx" ON "duty"("room_id", "user_id");

-- AddForeignKey
ALTER TABLE "duty" ADD CONSTRAINT "duty_room_id_user_id_fkey" FOREIGN KEY ("room_id", "user_id") REFERENCES "membership"("room_id", "user_id") ON DELETE CASCADE ON UPDATE CASCADE;
