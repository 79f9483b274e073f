-- AlterTable
ALTER TABLE "ApplicationVersion" ADD COLUMN "extra" BOOLEAN;

-- CreateTable
CREATE TABLE "EarlierOpening" (
    "shopId" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "benchId" TEXT NOT NULL,
    "wasUntil" BIGINT CHECK ("wasUntil" >= 0 AND "wasUntil" = CAST("wasUntil" AS BIGINT)),
    "opensAt" BIGINT NOT NULL CHECK ("opensAt" = CAST("opensAt" AS BIGINT)),
    "reason" TEXT NOT NULL,
    "actor" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "commandId", "benchId"),
    CONSTRAINT "EarlierOpening_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

CREATE TRIGGER "EarlierOpening_no_update" BEFORE UPDATE ON "EarlierOpening"
BEGIN
  SELECT RAISE(ABORT, 'EarlierOpening only grows: correct a row by adding another one');
END;

CREATE TRIGGER "EarlierOpening_no_delete" BEFORE DELETE ON "EarlierOpening"
BEGIN
  SELECT RAISE(ABORT, 'EarlierOpening only grows: correct a row by adding another one');
END;
