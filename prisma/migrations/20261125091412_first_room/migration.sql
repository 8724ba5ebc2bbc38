-- CreateEnum
CREATE TYPE "Role" AS ENUM ('owner', 'caretaker', 'stand_in', 'viewer');

-- CreateEnum
CREATE TYPE "UnitSystem" AS ENUM ('metric', 'us');

-- CreateEnum
CREATE TYPE "SubjectKind" AS ENUM ('room', 'tank', 'culture', 'pair', 'clutch', 'larval_batch', 'juvenile_group');

-- CreateEnum
CREATE TYPE "TankKind" AS ENUM ('broodstock', 'larval', 'grow_out', 'quarantine', 'storage');

-- CreateEnum
CREATE TYPE "CultureKind" AS ENUM ('rotifer', 'copepod', 'microalgae', 'artemia_hatch');

-- CreateEnum
CREATE TYPE "RotiferStrain" AS ENUM ('L', 'S', 'SS');

-- CreateEnum
CREATE TYPE "ClutchIntent" AS ENUM ('undecided', 'raise_all', 'raise_part', 'leave_with_parents');

-- CreateEnum
CREATE TYPE "TaskState" AS ENUM ('open', 'done', 'skipped', 'missed', 'withdrawn');

-- CreateEnum
CREATE TYPE "FactKind" AS ENUM ('count', 'harvest', 'feeding', 'inoculation', 'water_change', 'water_test', 'loss', 'transfer', 'observation', 'care', 'spawning', 'hatch');

-- CreateTable
CREATE TABLE "user" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "email_verified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "user_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "session" (
    "id" TEXT NOT NULL,
    "user_id" TEXT NOT NULL,
    "token" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "ip_address" TEXT,
    "user_agent" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "account" (
    "id" TEXT NOT NULL,
    "user_id" TEXT NOT NULL,
    "account_id" TEXT NOT NULL,
    "provider_id" TEXT NOT NULL,
    "access_token" TEXT,
    "refresh_token" TEXT,
    "id_token" TEXT,
    "access_token_expires_at" TIMESTAMPTZ(3),
    "refresh_token_expires_at" TIMESTAMPTZ(3),
    "scope" TEXT,
    "password" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "verification" (
    "id" TEXT NOT NULL,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "verification_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rate_limit" (
    "id" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "last_request" BIGINT NOT NULL,

    CONSTRAINT "rate_limit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "server" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "claim_code_hash" TEXT,
    "claimed_at" TIMESTAMPTZ(3),
    "claimed_by" TEXT,

    CONSTRAINT "server_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "idempotency_key" (
    "user_id" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "request_hash" TEXT NOT NULL,
    "status" INTEGER NOT NULL,
    "body" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "idempotency_key_pkey" PRIMARY KEY ("user_id","key")
);

-- CreateTable
CREATE TABLE "room" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "units" "UnitSystem" NOT NULL,
    "lights_on_at" TEXT NOT NULL,
    "lights_off_at" TEXT NOT NULL,
    "rounds" JSONB NOT NULL,
    "salinity" DOUBLE PRECISION NOT NULL,
    "temperature_c" DOUBLE PRECISION NOT NULL,
    "is_demo" BOOLEAN NOT NULL DEFAULT false,
    "revision" INTEGER NOT NULL DEFAULT 0,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "room_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "membership" (
    "room_id" UUID NOT NULL,
    "user_id" TEXT NOT NULL,
    "role" "Role" NOT NULL,
    "joined_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "membership_pkey" PRIMARY KEY ("room_id","user_id")
);

-- CreateTable
CREATE TABLE "invitation" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "role" "Role" NOT NULL,
    "token_hash" TEXT NOT NULL,
    "created_by" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "accepted_at" TIMESTAMPTZ(3),
    "accepted_by" TEXT,
    "revoked_at" TIMESTAMPTZ(3),

    CONSTRAINT "invitation_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "subject" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "kind" "SubjectKind" NOT NULL,
    "name" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "end_reason" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "subject_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "tank" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "kind" "TankKind" NOT NULL,
    "volume_l" DOUBLE PRECISION NOT NULL,
    "temperature_c" DOUBLE PRECISION NOT NULL,
    "salinity" DOUBLE PRECISION NOT NULL,
    "has_filter" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "tank_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "concentrate" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "cells_per_ml" DOUBLE PRECISION NOT NULL,
    "opened_on" DATE,
    "use_by" DATE,
    "is_finished" BOOLEAN NOT NULL DEFAULT false,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "concentrate_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "culture" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "kind" "CultureKind" NOT NULL,
    "strain" "RotiferStrain",
    "volume_l" DOUBLE PRECISION NOT NULL,
    "temperature_c" DOUBLE PRECISION NOT NULL,
    "salinity" DOUBLE PRECISION NOT NULL,
    "has_filter" BOOLEAN NOT NULL DEFAULT false,
    "is_backup" BOOLEAN NOT NULL DEFAULT false,
    "concentrate_id" UUID,
    "parent_culture_id" UUID,
    "started_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "culture_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "pair" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "species" TEXT NOT NULL,
    "tank_id" UUID NOT NULL,
    "nest_site" TEXT NOT NULL DEFAULT '',
    "formed_on" DATE,
    "is_resting" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "pair_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "clutch" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "pair_id" UUID NOT NULL,
    "intent" "ClutchIntent" NOT NULL DEFAULT 'undecided',
    "spawned_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "clutch_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "larval_batch" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "species" TEXT NOT NULL,
    "tank_id" UUID NOT NULL,
    "hatched_on" DATE NOT NULL,

    CONSTRAINT "larval_batch_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "batch_clutch" (
    "room_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "clutch_id" UUID NOT NULL,

    CONSTRAINT "batch_clutch_pkey" PRIMARY KEY ("room_id","batch_id","clutch_id")
);

-- CreateTable
CREATE TABLE "feed_link" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "culture_id" UUID NOT NULL,
    "from_on" DATE NOT NULL,
    "until_on" DATE,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "feed_link_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "fact" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "kind" "FactKind" NOT NULL,
    "subject_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "recorded_by" TEXT,
    "sign_off_id" UUID,
    "data" JSONB NOT NULL,
    "revision" INTEGER NOT NULL,
    "struck_at" TIMESTAMPTZ(3),
    "struck_by" TEXT,
    "struck_reason" TEXT,

    CONSTRAINT "fact_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "task" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "rule_id" TEXT NOT NULL,
    "subject_id" UUID NOT NULL,
    "station" TEXT NOT NULL,
    "on_date" DATE NOT NULL,
    "round_id" TEXT NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "state" "TaskState" NOT NULL,
    "due_at" TIMESTAMPTZ(3) NOT NULL,
    "late_at" TIMESTAMPTZ(3) NOT NULL,
    "closes_at" TIMESTAMPTZ(3) NOT NULL,
    "is_for_stand_in" BOOLEAN NOT NULL,
    "content" JSONB NOT NULL,
    "context" JSONB NOT NULL,
    "reason" TEXT,
    "closed_by" TEXT,
    "closed_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "task_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "task_change" (
    "room_id" UUID NOT NULL,
    "task_id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "before" JSONB NOT NULL,
    "after" JSONB NOT NULL,
    "why" TEXT NOT NULL,

    CONSTRAINT "task_change_pkey" PRIMARY KEY ("room_id","task_id","revision")
);

-- CreateTable
CREATE TABLE "sign_off" (
    "room_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "task_id" UUID NOT NULL,
    "user_id" TEXT NOT NULL,
    "done_at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "values" JSONB NOT NULL,
    "planned_amount" JSONB,
    "shown_amount" JSONB,
    "is_repeat" BOOLEAN NOT NULL DEFAULT false,
    "is_after_the_fact" BOOLEAN NOT NULL DEFAULT false,
    "undone_at" TIMESTAMPTZ(3),

    CONSTRAINT "sign_off_pkey" PRIMARY KEY ("room_id","id")
);

-- CreateTable
CREATE TABLE "rule_change" (
    "room_id" UUID NOT NULL,
    "rule_id" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "is_on" BOOLEAN NOT NULL,
    "parameters" JSONB NOT NULL,
    "changed_by" TEXT NOT NULL,
    "changed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "rule_change_pkey" PRIMARY KEY ("room_id","rule_id","version")
);

-- CreateTable
CREATE TABLE "day_list" (
    "room_id" UUID NOT NULL,
    "on_date" DATE NOT NULL,
    "opened_at" TIMESTAMPTZ(3) NOT NULL,
    "planned_at" TIMESTAMPTZ(3) NOT NULL,
    "revision" INTEGER NOT NULL,
    "gaps" JSONB NOT NULL DEFAULT '[]',

    CONSTRAINT "day_list_pkey" PRIMARY KEY ("room_id","on_date")
);

-- CreateTable
CREATE TABLE "audit_entry" (
    "room_id" UUID NOT NULL,
    "revision" INTEGER NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "user_id" TEXT,
    "actor_name" TEXT NOT NULL,
    "action" TEXT NOT NULL,
    "subject_id" UUID,
    "detail" JSONB NOT NULL,

    CONSTRAINT "audit_entry_pkey" PRIMARY KEY ("room_id","revision","ordinal")
);

-- CreateIndex
CREATE UNIQUE INDEX "user_email_key" ON "user"("email");

-- CreateIndex
CREATE UNIQUE INDEX "session_token_key" ON "session"("token");

-- CreateIndex
CREATE INDEX "session_user_id_idx" ON "session"("user_id");

-- CreateIndex
CREATE INDEX "account_user_id_idx" ON "account"("user_id");

-- CreateIndex
CREATE INDEX "verification_identifier_idx" ON "verification"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "rate_limit_key_key" ON "rate_limit"("key");

-- CreateIndex
CREATE INDEX "idempotency_key_created_at_idx" ON "idempotency_key"("created_at");

-- CreateIndex
CREATE INDEX "membership_user_id_idx" ON "membership"("user_id");

-- CreateIndex
CREATE UNIQUE INDEX "invitation_token_hash_key" ON "invitation"("token_hash");

-- CreateIndex
CREATE INDEX "subject_room_id_kind_idx" ON "subject"("room_id", "kind");

-- CreateIndex
CREATE INDEX "clutch_room_id_pair_id_idx" ON "clutch"("room_id", "pair_id");

-- CreateIndex
CREATE INDEX "fact_room_id_subject_id_at_idx" ON "fact"("room_id", "subject_id", "at" DESC);

-- CreateIndex
CREATE INDEX "fact_room_id_at_idx" ON "fact"("room_id", "at" DESC);

-- CreateIndex
CREATE INDEX "task_room_id_on_date_idx" ON "task"("room_id", "on_date");

-- CreateIndex
CREATE INDEX "task_room_id_state_closes_at_idx" ON "task"("room_id", "state", "closes_at");

-- CreateIndex
CREATE UNIQUE INDEX "task_room_id_key_key" ON "task"("room_id", "key");

-- CreateIndex
CREATE INDEX "sign_off_room_id_task_id_idx" ON "sign_off"("room_id", "task_id");

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "account" ADD CONSTRAINT "account_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "membership" ADD CONSTRAINT "membership_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "invitation" ADD CONSTRAINT "invitation_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "subject" ADD CONSTRAINT "subject_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "tank" ADD CONSTRAINT "tank_room_id_id_fkey" FOREIGN KEY ("room_id", "id") REFERENCES "subject"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "concentrate" ADD CONSTRAINT "concentrate_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "culture" ADD CONSTRAINT "culture_room_id_id_fkey" FOREIGN KEY ("room_id", "id") REFERENCES "subject"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "culture" ADD CONSTRAINT "culture_room_id_concentrate_id_fkey" FOREIGN KEY ("room_id", "concentrate_id") REFERENCES "concentrate"("room_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "culture" ADD CONSTRAINT "culture_room_id_parent_culture_id_fkey" FOREIGN KEY ("room_id", "parent_culture_id") REFERENCES "culture"("room_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "pair" ADD CONSTRAINT "pair_room_id_id_fkey" FOREIGN KEY ("room_id", "id") REFERENCES "subject"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pair" ADD CONSTRAINT "pair_room_id_tank_id_fkey" FOREIGN KEY ("room_id", "tank_id") REFERENCES "tank"("room_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clutch" ADD CONSTRAINT "clutch_room_id_id_fkey" FOREIGN KEY ("room_id", "id") REFERENCES "subject"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clutch" ADD CONSTRAINT "clutch_room_id_pair_id_fkey" FOREIGN KEY ("room_id", "pair_id") REFERENCES "pair"("room_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "larval_batch" ADD CONSTRAINT "larval_batch_room_id_id_fkey" FOREIGN KEY ("room_id", "id") REFERENCES "subject"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "larval_batch" ADD CONSTRAINT "larval_batch_room_id_tank_id_fkey" FOREIGN KEY ("room_id", "tank_id") REFERENCES "tank"("room_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "batch_clutch" ADD CONSTRAINT "batch_clutch_room_id_batch_id_fkey" FOREIGN KEY ("room_id", "batch_id") REFERENCES "larval_batch"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "batch_clutch" ADD CONSTRAINT "batch_clutch_room_id_clutch_id_fkey" FOREIGN KEY ("room_id", "clutch_id") REFERENCES "clutch"("room_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "feed_link" ADD CONSTRAINT "feed_link_room_id_batch_id_fkey" FOREIGN KEY ("room_id", "batch_id") REFERENCES "larval_batch"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "feed_link" ADD CONSTRAINT "feed_link_room_id_culture_id_fkey" FOREIGN KEY ("room_id", "culture_id") REFERENCES "culture"("room_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "fact" ADD CONSTRAINT "fact_room_id_subject_id_fkey" FOREIGN KEY ("room_id", "subject_id") REFERENCES "subject"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "fact" ADD CONSTRAINT "fact_room_id_sign_off_id_fkey" FOREIGN KEY ("room_id", "sign_off_id") REFERENCES "sign_off"("room_id", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "task" ADD CONSTRAINT "task_room_id_subject_id_fkey" FOREIGN KEY ("room_id", "subject_id") REFERENCES "subject"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "task_change" ADD CONSTRAINT "task_change_room_id_task_id_fkey" FOREIGN KEY ("room_id", "task_id") REFERENCES "task"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sign_off" ADD CONSTRAINT "sign_off_room_id_task_id_fkey" FOREIGN KEY ("room_id", "task_id") REFERENCES "task"("room_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "rule_change" ADD CONSTRAINT "rule_change_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "day_list" ADD CONSTRAINT "day_list_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "audit_entry" ADD CONSTRAINT "audit_entry_room_id_fkey" FOREIGN KEY ("room_id") REFERENCES "room"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- What Prisma cannot say: facts and the audit log are appended, never edited or deleted.
CREATE FUNCTION fact_is_append_only() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' THEN
    RAISE EXCEPTION 'A fact is struck out, never deleted (fact %)', OLD.id;
  END IF;
  IF (NEW.room_id, NEW.id, NEW.kind, NEW.subject_id, NEW.at, NEW.received_at, NEW.recorded_by, NEW.sign_off_id, NEW.data, NEW.revision)
     IS DISTINCT FROM
     (OLD.room_id, OLD.id, OLD.kind, OLD.subject_id, OLD.at, OLD.received_at, OLD.recorded_by, OLD.sign_off_id, OLD.data, OLD.revision) THEN
    RAISE EXCEPTION 'A fact is struck out, never edited (fact %)', OLD.id;
  END IF;
  IF OLD.struck_at IS NOT NULL THEN
    RAISE EXCEPTION 'A fact is struck out once (fact %)', OLD.id;
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER fact_append_only BEFORE UPDATE OR DELETE ON "fact" FOR EACH ROW EXECUTE FUNCTION fact_is_append_only();

CREATE FUNCTION audit_is_append_only() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'The audit log is appended, never changed (room %, revision %)', OLD.room_id, OLD.revision;
END $$;
CREATE TRIGGER audit_append_only BEFORE UPDATE OR DELETE ON "audit_entry" FOR EACH ROW EXECUTE FUNCTION audit_is_append_only();

ALTER TABLE "tank" ADD CONSTRAINT "tank_volume_positive" CHECK ("volume_l" > 0);
ALTER TABLE "culture" ADD CONSTRAINT "culture_volume_positive" CHECK ("volume_l" > 0);
ALTER TABLE "culture" ADD CONSTRAINT "culture_rotifer_has_strain" CHECK ("kind" <> 'rotifer' OR "strain" IS NOT NULL);
ALTER TABLE "concentrate" ADD CONSTRAINT "concentrate_strength_positive" CHECK ("cells_per_ml" > 0);
ALTER TABLE "feed_link" ADD CONSTRAINT "feed_link_ends_after_start" CHECK ("until_on" IS NULL OR "until_on" >= "from_on");
ALTER TABLE "fact" ADD CONSTRAINT "fact_struck_whole" CHECK (("struck_at" IS NULL) = ("struck_reason" IS NULL));
ALTER TABLE "server" ADD CONSTRAINT "server_one_row" CHECK ("id" = 1);
