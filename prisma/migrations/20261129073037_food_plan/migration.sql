-- CreateTable
CREATE TABLE "food_plan" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "for_date" DATE NOT NULL,
    "input_hash" TEXT NOT NULL,
    "answer" JSONB NOT NULL,

    CONSTRAINT "food_plan_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateIndex
CREATE INDEX "food_plan_room_id_revision_idx" ON "food_plan"("room_id", "revision" DESC);

-- CreateIndex
CREATE UNIQUE INDEX "food_plan_room_id_for_date_input_hash_key" ON "food_plan"("room_id", "for_date", "input_hash");

-- AddForeignKey
ALTER TABLE "food_plan" ADD CONSTRAINT "food_plan_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;
