-- The status of an answer is its route's: nothing ever read it here.
ALTER TABLE "idempotency_key" DROP COLUMN "status";
