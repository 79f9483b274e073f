-- AlterTable
ALTER TABLE "ApplicationVersion" ADD COLUMN     "extra" BOOLEAN;

-- CreateTable
CREATE TABLE "EarlierOpening" (
    "shopId" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "benchId" TEXT NOT NULL,
    "wasUntil" BIGINT CHECK ("wasUntil" >= 0),
    "opensAt" BIGINT NOT NULL,
    "reason" TEXT NOT NULL,
    "actor" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL,

    CONSTRAINT "EarlierOpening_pkey" PRIMARY KEY ("shopId","commandId","benchId")
);

-- AddForeignKey
ALTER TABLE "EarlierOpening" ADD CONSTRAINT "EarlierOpening_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

CREATE TRIGGER "EarlierOpening_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "EarlierOpening"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();
