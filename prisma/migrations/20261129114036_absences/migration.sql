-- CreateTable
CREATE TABLE "last_tick" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "last_tick_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "absence" (
    "from_at" TIMESTAMPTZ(3) NOT NULL,
    "to_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "absence_pkey" PRIMARY KEY ("from_at")
);
