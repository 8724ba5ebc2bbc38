-- DropIndex
DROP INDEX "gauge_room_id_device_id_key_key";

-- CreateIndex
CREATE INDEX "gauge_room_id_device_id_idx" ON "gauge"("room_id", "device_id");

-- Among those in use; one that was taken out of use leaves its name.
CREATE UNIQUE INDEX "gauge_name_key" ON "gauge"("room_id", "device_id", "key") WHERE "ended_at" IS NULL;
