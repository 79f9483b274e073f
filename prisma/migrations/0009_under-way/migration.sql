-- CreateTable
CREATE TABLE "UnderWay" (
    "shopId" TEXT NOT NULL,
    "sprayingId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "kind" TEXT NOT NULL,
    "recipeId" TEXT NOT NULL,
    "benches" JSONB NOT NULL,
    "programId" TEXT,
    "plannedOn" TEXT CHECK ("plannedOn" LIKE '____-__-__'),
    "startedAt" BIGINT NOT NULL CHECK ("startedAt" = CAST("startedAt" AS BIGINT)),
    "endedAt" BIGINT CHECK ("endedAt" = CAST("endedAt" AS BIGINT)),
    "closedUntil" BIGINT CHECK ("closedUntil" >= 0 AND "closedUntil" = CAST("closedUntil" AS BIGINT)),
    "reiMinutes" INTEGER CHECK ("reiMinutes" >= 0 AND "reiMinutes" = CAST("reiMinutes" AS BIGINT)),
    "sprayedBy" TEXT,
    "passed" JSONB,
    "reason" TEXT,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "sprayingId", "number"),
    CONSTRAINT "UnderWay_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

CREATE TRIGGER "UnderWay_no_update" BEFORE UPDATE ON "UnderWay"
BEGIN
  SELECT RAISE(ABORT, 'UnderWay only grows: correct a row by adding another one');
END;

CREATE TRIGGER "UnderWay_no_delete" BEFORE DELETE ON "UnderWay"
BEGIN
  SELECT RAISE(ABORT, 'UnderWay only grows: correct a row by adding another one');
END;
