-- CreateEnum
CREATE TYPE "PairSex" AS ENUM ('female', 'male');

-- CreateTable
CREATE TABLE "pair_descent" (
    "room_id" UUID NOT NULL,
    "pair_id" UUID NOT NULL,
    "sex" "PairSex" NOT NULL,
    "clutch_id" UUID NOT NULL,

    CONSTRAINT "pair_descent_pkey" PRIMARY KEY ("room_id","pair_id","sex")
);

-- AddForeignKey
ALTER TABLE "pair_descent" ADD CONSTRAINT "pair_descent_room_id_pair_id_fkey" FOREIGN KEY ("room_id", "pair_id") REFERENCES "pair"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pair_descent" ADD CONSTRAINT "pair_descent_room_id_clutch_id_fkey" FOREIGN KEY ("room_id", "clutch_id") REFERENCES "clutch"("room_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
