-- CreateTable
CREATE TABLE "SafetySheetChange" (
    "shopId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "step" INTEGER NOT NULL CHECK ("step" >= 0 AND "step" = CAST("step" AS BIGINT)),
    "isAway" BOOLEAN NOT NULL,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "productId", "number", "step"),
    CONSTRAINT "SafetySheetChange_shopId_productId_number_fkey" FOREIGN KEY ("shopId", "productId", "number") REFERENCES "SafetySheet" ("shopId", "productId", "number") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "RowSeal" (
    "shopId" TEXT NOT NULL,
    "tableName" TEXT NOT NULL,
    "rowKey" TEXT NOT NULL,
    "hash" TEXT NOT NULL,

    PRIMARY KEY ("shopId", "tableName", "rowKey")
) WITHOUT ROWID;

CREATE TRIGGER "SafetySheetChange_no_update" BEFORE UPDATE ON "SafetySheetChange"
BEGIN
  SELECT RAISE(ABORT, 'SafetySheetChange only grows: correct a row by adding another one');
END;

CREATE TRIGGER "SafetySheetChange_no_delete" BEFORE DELETE ON "SafetySheetChange"
BEGIN
  SELECT RAISE(ABORT, 'SafetySheetChange only grows: correct a row by adding another one');
END;
