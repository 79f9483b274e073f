-- CreateTable
CREATE TABLE "UnderWay" (
    "shopId" TEXT NOT NULL,
    "sprayingId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "kind" TEXT NOT NULL,
    "recipeId" TEXT NOT NULL,
    "benches" JSON NOT NULL,
    "programId" TEXT,
    "plannedOn" TEXT CHECK ("plannedOn" LIKE '____-__-__'),
    "startedAt" BIGINT NOT NULL,
    "endedAt" BIGINT,
    "closedUntil" BIGINT CHECK ("closedUntil" >= 0),
    "reiMinutes" INTEGER CHECK ("reiMinutes" >= 0),
    "sprayedBy" TEXT,
    "passed" JSON,
    "reason" TEXT,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL,

    CONSTRAINT "UnderWay_pkey" PRIMARY KEY ("shopId","sprayingId","number")
);

-- AddForeignKey
ALTER TABLE "UnderWay" ADD CONSTRAINT "UnderWay_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

CREATE TRIGGER "UnderWay_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "UnderWay"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();
