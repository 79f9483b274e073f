-- AlterTable
ALTER TABLE "Shop" ADD COLUMN     "address" TEXT,
ADD COLUMN     "contact" TEXT,
ADD COLUMN     "emergency" JSON,
ADD COLUMN     "keepRecordsYears" INTEGER CHECK ("keepRecordsYears" >= 0),
ADD COLUMN     "minutesPerBatch" DOUBLE PRECISION,
ADD COLUMN     "minutesPerPlant" DOUBLE PRECISION,
ADD COLUMN     "monthlyHighsC" JSON,
ADD COLUMN     "oilHotC" DOUBLE PRECISION,
ADD COLUMN     "oilSulfurDays" INTEGER CHECK ("oilSulfurDays" >= 0),
ADD COLUMN     "specialDays" JSON;

-- AlterTable
ALTER TABLE "Product" ADD COLUMN     "firstAid" TEXT,
ADD COLUMN     "hotAboveC" DOUBLE PRECISION,
ADD COLUMN     "madeFrom" JSON,
ADD COLUMN     "storage" TEXT;

-- AlterTable
ALTER TABLE "Lot" ADD COLUMN     "offerId" TEXT,
ADD COLUMN     "orderId" TEXT;

-- AlterTable
ALTER TABLE "Bench" ADD COLUMN     "harvestOn" TEXT CHECK ("harvestOn" LIKE '____-__-__'),
ADD COLUMN     "place" TEXT;

-- AlterTable
ALTER TABLE "ApplicationVersion" ADD COLUMN     "closedUntil" BIGINT CHECK ("closedUntil" >= 0),
ADD COLUMN     "crop" TEXT,
ADD COLUMN     "location" TEXT,
ADD COLUMN     "mixedAt" BIGINT,
ADD COLUMN     "temperatureC" DOUBLE PRECISION,
ADD COLUMN     "withdrawn" BOOLEAN;

-- AlterTable
ALTER TABLE "ApplicationProduct" ADD COLUMN     "actives" TEXT,
ADD COLUMN     "name" TEXT,
ADD COLUMN     "registration" TEXT;

-- CreateTable
CREATE TABLE "AmendmentConfirmation" (
    "shopId" TEXT NOT NULL,
    "applicationId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "reason" TEXT NOT NULL,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL,

    CONSTRAINT "AmendmentConfirmation_pkey" PRIMARY KEY ("shopId","applicationId","number")
);

-- CreateTable
CREATE TABLE "RecordSeal" (
    "shopId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "applicationId" TEXT NOT NULL,
    "version" INTEGER NOT NULL CHECK ("version" >= 0),
    "previousHash" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "sealedAt" BIGINT NOT NULL,

    CONSTRAINT "RecordSeal_pkey" PRIMARY KEY ("shopId","number")
);

-- CreateTable
CREATE TABLE "SafetySheet" (
    "shopId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0),
    "fileName" TEXT NOT NULL,
    "size" INTEGER NOT NULL CHECK ("size" >= 0),
    "hash" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL,

    CONSTRAINT "SafetySheet_pkey" PRIMARY KEY ("shopId","productId","number")
);

-- CreateTable
CREATE TABLE "PurchaseOrder" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "supplierId" TEXT NOT NULL,
    "placedOn" TEXT NOT NULL CHECK ("placedOn" LIKE '____-__-__'),
    "expectedOn" TEXT CHECK ("expectedOn" LIKE '____-__-__'),
    "freight" BIGINT CHECK ("freight" >= 0),
    "note" TEXT,
    "closedOn" TEXT CHECK ("closedOn" LIKE '____-__-__'),

    CONSTRAINT "PurchaseOrder_pkey" PRIMARY KEY ("shopId","id")
);

-- CreateTable
CREATE TABLE "PurchaseLine" (
    "shopId" TEXT NOT NULL,
    "orderId" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0),
    "offerId" TEXT NOT NULL,
    "count" INTEGER NOT NULL CHECK ("count" > 0),
    "price" BIGINT CHECK ("price" >= 0),

    CONSTRAINT "PurchaseLine_pkey" PRIMARY KEY ("shopId","orderId","position")
);

-- CreateTable
CREATE TABLE "SharedLink" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "token" TEXT NOT NULL,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL,
    "revokedAt" BIGINT,

    CONSTRAINT "SharedLink_pkey" PRIMARY KEY ("shopId","id")
);

-- CreateTable
CREATE TABLE "AlertSettings" (
    "shopId" TEXT NOT NULL,
    "settings" JSON NOT NULL,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "savedAt" BIGINT NOT NULL,

    CONSTRAINT "AlertSettings_pkey" PRIMARY KEY ("shopId")
);

-- CreateTable
CREATE TABLE "AlertSent" (
    "shopId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "way" TEXT NOT NULL,
    "sentAt" BIGINT NOT NULL,

    CONSTRAINT "AlertSent_pkey" PRIMARY KEY ("shopId","key","way")
);

-- CreateTable
CREATE TABLE "ClockMark" (
    "id" TEXT NOT NULL,
    "at" BIGINT NOT NULL CHECK ("at" >= 0),

    CONSTRAINT "ClockMark_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ClockConfirmation" (
    "id" TEXT NOT NULL,
    "markAt" BIGINT NOT NULL,
    "nowAt" BIGINT NOT NULL,
    "actor" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL,

    CONSTRAINT "ClockConfirmation_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "RecordSeal_shopId_applicationId_version_key" ON "RecordSeal"("shopId", "applicationId", "version");

-- CreateIndex
CREATE UNIQUE INDEX "SharedLink_token_key" ON "SharedLink"("token");

-- AddForeignKey
ALTER TABLE "AmendmentConfirmation" ADD CONSTRAINT "AmendmentConfirmation_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "RecordSeal" ADD CONSTRAINT "RecordSeal_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "SafetySheet" ADD CONSTRAINT "SafetySheet_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "SafetySheet" ADD CONSTRAINT "SafetySheet_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "PurchaseOrder" ADD CONSTRAINT "PurchaseOrder_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "PurchaseOrder" ADD CONSTRAINT "PurchaseOrder_shopId_supplierId_fkey" FOREIGN KEY ("shopId", "supplierId") REFERENCES "Supplier"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "PurchaseLine" ADD CONSTRAINT "PurchaseLine_shopId_orderId_fkey" FOREIGN KEY ("shopId", "orderId") REFERENCES "PurchaseOrder"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "PurchaseLine" ADD CONSTRAINT "PurchaseLine_shopId_offerId_fkey" FOREIGN KEY ("shopId", "offerId") REFERENCES "Offer"("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "SharedLink" ADD CONSTRAINT "SharedLink_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "AlertSettings" ADD CONSTRAINT "AlertSettings_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "AlertSent" ADD CONSTRAINT "AlertSent_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

CREATE TRIGGER "AmendmentConfirmation_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "AmendmentConfirmation"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "RecordSeal_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "RecordSeal"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "SafetySheet_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "SafetySheet"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "AlertSent_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "AlertSent"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();

CREATE TRIGGER "ClockConfirmation_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "ClockConfirmation"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();
