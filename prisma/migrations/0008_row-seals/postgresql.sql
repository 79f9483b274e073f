-- CreateTable
CREATE TABLE "SafetySheetChange" (
    "shopId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "step" INTEGER NOT NULL CHECK ("step" >= 0),
    "isAway" BOOLEAN NOT NULL,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL,

    CONSTRAINT "SafetySheetChange_pkey" PRIMARY KEY ("shopId","productId","number","step")
);

-- CreateTable
CREATE TABLE "RowSeal" (
    "shopId" TEXT NOT NULL,
    "tableName" TEXT NOT NULL,
    "rowKey" TEXT NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "RowSeal_pkey" PRIMARY KEY ("shopId","tableName","rowKey")
);

-- AddForeignKey
ALTER TABLE "SafetySheetChange" ADD CONSTRAINT "SafetySheetChange_shopId_productId_number_fkey" FOREIGN KEY ("shopId", "productId", "number") REFERENCES "SafetySheet"("shopId", "productId", "number") ON DELETE RESTRICT ON UPDATE RESTRICT;

CREATE TRIGGER "SafetySheetChange_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "SafetySheetChange"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();
