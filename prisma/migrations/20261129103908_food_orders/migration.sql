-- AlterTable
ALTER TABLE "food_plan" ADD COLUMN     "orders" JSONB,
ADD COLUMN     "stands_since" INTEGER;

-- CreateIndex
CREATE INDEX "food_plan_room_id_stands_since_idx" ON "food_plan"("room_id", "stands_since" DESC);
