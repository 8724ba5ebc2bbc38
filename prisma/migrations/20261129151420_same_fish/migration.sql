-- AlterTable
ALTER TABLE "pair_descent" ADD COLUMN     "same_pair_id" UUID,
ADD COLUMN     "same_sex" "PairSex",
ALTER COLUMN "clutch_id" DROP NOT NULL;

-- AddForeignKey
ALTER TABLE "pair_descent" ADD CONSTRAINT "pair_descent_room_id_same_pair_id_fkey" FOREIGN KEY ("room_id", "same_pair_id") REFERENCES "pair"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- Out of a clutch of the room, or the fish of another pair: one of the two.
ALTER TABLE "pair_descent" ADD CONSTRAINT "pair_descent_one_origin"
  CHECK (("clutch_id" IS NULL) <> ("same_pair_id" IS NULL) AND ("same_pair_id" IS NULL) = ("same_sex" IS NULL));
