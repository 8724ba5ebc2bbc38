-- AlterTable
ALTER TABLE "fact" ADD COLUMN "struck_revision" INTEGER;

-- CreateIndex
CREATE INDEX "fact_room_id_revision_idx" ON "fact"("room_id", "revision");

-- CreateIndex
CREATE INDEX "fact_room_id_struck_revision_idx" ON "fact"("room_id", "struck_revision");

-- What was struck out before has been known as such since, so any revision up to now does; the trigger that keeps a fact
-- from being changed once struck out stands aside for this one statement.
ALTER TABLE "fact" DISABLE TRIGGER fact_append_only;
UPDATE "fact" SET "struck_revision" = "revision" WHERE "struck_at" IS NOT NULL;
ALTER TABLE "fact" ENABLE TRIGGER fact_append_only;
ALTER TABLE "fact" DROP CONSTRAINT "fact_struck_whole";
ALTER TABLE "fact" ADD CONSTRAINT "fact_struck_whole" CHECK (
  ("struck_at" IS NULL) = ("struck_reason" IS NULL) AND ("struck_at" IS NULL) = ("struck_revision" IS NULL)
);
