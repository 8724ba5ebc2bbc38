-- AlterEnum
-- This migration adds more than one value to an enum.
-- With PostgreSQL versions 11 and earlier, this is not possible
-- in a single migration. This can be worked around by creating
-- multiple migrations, each migration adding only one value to
-- the enum.


ALTER TYPE "FactKind" ADD VALUE 'treatment';
ALTER TYPE "FactKind" ADD VALUE 'outcome';

-- CreateTable
CREATE TABLE "juvenile_group" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "species" TEXT NOT NULL,
    "tank_id" UUID NOT NULL,
    "from_batch_id" UUID,
    "settled_on" DATE NOT NULL,

    CONSTRAINT "juvenile_group_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "note" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "written_by" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "is_worry" BOOLEAN NOT NULL DEFAULT false,
    "subject_id" UUID,
    "settled_at" TIMESTAMPTZ(3),
    "settled_by" TEXT,
    "revision" INTEGER NOT NULL,

    CONSTRAINT "note_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "photo" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "subject_id" UUID NOT NULL,
    "fact_id" UUID,
    "added_at" TIMESTAMPTZ(3) NOT NULL,
    "added_by" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "bytes" INTEGER NOT NULL,
    "caption" TEXT NOT NULL DEFAULT '',
    "struck_at" TIMESTAMPTZ(3),

    CONSTRAINT "photo_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "last_look" (
    "room_id" UUID NOT NULL,
    "user_id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "last_look_pkey" PRIMARY KEY ("room_id","user_id")
);

-- CreateIndex
CREATE INDEX "note_room_id_at_idx" ON "note"("room_id", "at" DESC);

-- CreateIndex
CREATE INDEX "photo_room_id_subject_id_idx" ON "photo"("room_id", "subject_id");

-- AddForeignKey
ALTER TABLE "juvenile_group" ADD CONSTRAINT "juvenile_group_room_id_id_fkey" FOREIGN KEY ("room_id", "id") REFERENCES "subject"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "juvenile_group" ADD CONSTRAINT "juvenile_group_room_id_tank_id_fkey" FOREIGN KEY ("room_id", "tank_id") REFERENCES "tank"("room_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "juvenile_group" ADD CONSTRAINT "juvenile_group_room_id_from_batch_id_fkey" FOREIGN KEY ("room_id", "from_batch_id") REFERENCES "larval_batch"("room_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "note" ADD CONSTRAINT "note_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "note" ADD CONSTRAINT "note_room_id_subject_id_fkey" FOREIGN KEY ("room_id", "subject_id") REFERENCES "subject"("room_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_room_id_subject_id_fkey" FOREIGN KEY ("room_id", "subject_id") REFERENCES "subject"("room_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_room_id_fact_id_fkey" FOREIGN KEY ("room_id", "fact_id") REFERENCES "fact"("room_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "last_look" ADD CONSTRAINT "last_look_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;
