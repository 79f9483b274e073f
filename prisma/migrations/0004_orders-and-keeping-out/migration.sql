-- AlterTable
ALTER TABLE "Shop" ADD COLUMN "address" TEXT;
ALTER TABLE "Shop" ADD COLUMN "contact" TEXT;
ALTER TABLE "Shop" ADD COLUMN "emergency" JSONB;
ALTER TABLE "Shop" ADD COLUMN "keepRecordsYears" INTEGER CHECK ("keepRecordsYears" >= 0 AND "keepRecordsYears" = CAST("keepRecordsYears" AS BIGINT));
ALTER TABLE "Shop" ADD COLUMN "minutesPerBatch" REAL;
ALTER TABLE "Shop" ADD COLUMN "minutesPerPlant" REAL;
ALTER TABLE "Shop" ADD COLUMN "monthlyHighsC" JSONB;
ALTER TABLE "Shop" ADD COLUMN "oilHotC" REAL;
ALTER TABLE "Shop" ADD COLUMN "oilSulfurDays" INTEGER CHECK ("oilSulfurDays" >= 0 AND "oilSulfurDays" = CAST("oilSulfurDays" AS BIGINT));
ALTER TABLE "Shop" ADD COLUMN "specialDays" JSONB;

-- AlterTable
ALTER TABLE "Product" ADD COLUMN "firstAid" TEXT;
ALTER TABLE "Product" ADD COLUMN "hotAboveC" REAL;
ALTER TABLE "Product" ADD COLUMN "madeFrom" JSONB;
ALTER TABLE "Product" ADD COLUMN "storage" TEXT;

-- AlterTable
ALTER TABLE "Lot" ADD COLUMN "offerId" TEXT;
ALTER TABLE "Lot" ADD COLUMN "orderId" TEXT;

-- AlterTable
ALTER TABLE "Bench" ADD COLUMN "harvestOn" TEXT CHECK ("harvestOn" LIKE '____-__-__');
ALTER TABLE "Bench" ADD COLUMN "place" TEXT;

-- AlterTable
ALTER TABLE "ApplicationVersion" ADD COLUMN "closedUntil" BIGINT CHECK ("closedUntil" >= 0 AND "closedUntil" = CAST("closedUntil" AS BIGINT));
ALTER TABLE "ApplicationVersion" ADD COLUMN "crop" TEXT;
ALTER TABLE "ApplicationVersion" ADD COLUMN "location" TEXT;
ALTER TABLE "ApplicationVersion" ADD COLUMN "mixedAt" BIGINT CHECK ("mixedAt" = CAST("mixedAt" AS BIGINT));
ALTER TABLE "ApplicationVersion" ADD COLUMN "temperatureC" REAL;
ALTER TABLE "ApplicationVersion" ADD COLUMN "withdrawn" BOOLEAN;

-- AlterTable
ALTER TABLE "ApplicationProduct" ADD COLUMN "actives" TEXT;
ALTER TABLE "ApplicationProduct" ADD COLUMN "name" TEXT;
ALTER TABLE "ApplicationProduct" ADD COLUMN "registration" TEXT;

-- CreateTable
CREATE TABLE "AmendmentConfirmation" (
    "shopId" TEXT NOT NULL,
    "applicationId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "reason" TEXT NOT NULL,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "applicationId", "number"),
    CONSTRAINT "AmendmentConfirmation_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "RecordSeal" (
    "shopId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "applicationId" TEXT NOT NULL,
    "version" INTEGER NOT NULL CHECK ("version" >= 0 AND "version" = CAST("version" AS BIGINT)),
    "previousHash" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "sealedAt" BIGINT NOT NULL CHECK ("sealedAt" = CAST("sealedAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "number"),
    CONSTRAINT "RecordSeal_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "SafetySheet" (
    "shopId" TEXT NOT NULL,
    "productId" TEXT NOT NULL,
    "number" INTEGER NOT NULL CHECK ("number" >= 0 AND "number" = CAST("number" AS BIGINT)),
    "fileName" TEXT NOT NULL,
    "size" INTEGER NOT NULL CHECK ("size" >= 0 AND "size" = CAST("size" AS BIGINT)),
    "hash" TEXT NOT NULL,
    "bytes" BLOB NOT NULL,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "productId", "number"),
    CONSTRAINT "SafetySheet_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "SafetySheet_shopId_productId_fkey" FOREIGN KEY ("shopId", "productId") REFERENCES "Product" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "PurchaseOrder" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "supplierId" TEXT NOT NULL,
    "placedOn" TEXT NOT NULL CHECK ("placedOn" LIKE '____-__-__'),
    "expectedOn" TEXT CHECK ("expectedOn" LIKE '____-__-__'),
    "freight" BIGINT CHECK ("freight" >= 0 AND "freight" = CAST("freight" AS BIGINT)),
    "note" TEXT,
    "closedOn" TEXT CHECK ("closedOn" LIKE '____-__-__'),

    PRIMARY KEY ("shopId", "id"),
    CONSTRAINT "PurchaseOrder_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "PurchaseOrder_shopId_supplierId_fkey" FOREIGN KEY ("shopId", "supplierId") REFERENCES "Supplier" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "PurchaseLine" (
    "shopId" TEXT NOT NULL,
    "orderId" TEXT NOT NULL,
    "position" INTEGER NOT NULL CHECK ("position" >= 0 AND "position" = CAST("position" AS BIGINT)),
    "offerId" TEXT NOT NULL,
    "count" INTEGER NOT NULL CHECK ("count" > 0 AND "count" = CAST("count" AS BIGINT)),
    "price" BIGINT CHECK ("price" >= 0 AND "price" = CAST("price" AS BIGINT)),

    PRIMARY KEY ("shopId", "orderId", "position"),
    CONSTRAINT "PurchaseLine_shopId_orderId_fkey" FOREIGN KEY ("shopId", "orderId") REFERENCES "PurchaseOrder" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "PurchaseLine_shopId_offerId_fkey" FOREIGN KEY ("shopId", "offerId") REFERENCES "Offer" ("shopId", "id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "SharedLink" (
    "shopId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "token" TEXT NOT NULL,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL CHECK ("madeAt" = CAST("madeAt" AS BIGINT)),
    "revokedAt" BIGINT CHECK ("revokedAt" = CAST("revokedAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "id"),
    CONSTRAINT "SharedLink_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "AlertSettings" (
    "shopId" TEXT NOT NULL PRIMARY KEY,
    "settings" JSONB NOT NULL,
    "actor" TEXT NOT NULL,
    "commandId" TEXT NOT NULL,
    "savedAt" BIGINT NOT NULL CHECK ("savedAt" = CAST("savedAt" AS BIGINT)),
    CONSTRAINT "AlertSettings_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "AlertSent" (
    "shopId" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    "way" TEXT NOT NULL,
    "sentAt" BIGINT NOT NULL CHECK ("sentAt" = CAST("sentAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "key", "way"),
    CONSTRAINT "AlertSent_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "ClockMark" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "at" BIGINT NOT NULL CHECK ("at" >= 0 AND "at" = CAST("at" AS BIGINT))
);

-- CreateTable
CREATE TABLE "ClockConfirmation" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "markAt" BIGINT NOT NULL CHECK ("markAt" = CAST("markAt" AS BIGINT)),
    "nowAt" BIGINT NOT NULL CHECK ("nowAt" = CAST("nowAt" AS BIGINT)),
    "actor" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT))
);

-- CreateIndex
CREATE UNIQUE INDEX "RecordSeal_shopId_applicationId_version_key" ON "RecordSeal"("shopId", "applicationId", "version");

-- CreateIndex
CREATE UNIQUE INDEX "SharedLink_token_key" ON "SharedLink"("token");

CREATE TRIGGER "AmendmentConfirmation_no_update" BEFORE UPDATE ON "AmendmentConfirmation"
BEGIN
  SELECT RAISE(ABORT, 'AmendmentConfirmation only grows: correct a row by adding another one');
END;

CREATE TRIGGER "AmendmentConfirmation_no_delete" BEFORE DELETE ON "AmendmentConfirmation"
BEGIN
  SELECT RAISE(ABORT, 'AmendmentConfirmation only grows: correct a row by adding another one');
END;

CREATE TRIGGER "RecordSeal_no_update" BEFORE UPDATE ON "RecordSeal"
BEGIN
  SELECT RAISE(ABORT, 'RecordSeal only grows: correct a row by adding another one');
END;

CREATE TRIGGER "RecordSeal_no_delete" BEFORE DELETE ON "RecordSeal"
BEGIN
  SELECT RAISE(ABORT, 'RecordSeal only grows: correct a row by adding another one');
END;

CREATE TRIGGER "SafetySheet_no_update" BEFORE UPDATE ON "SafetySheet"
BEGIN
  SELECT RAISE(ABORT, 'SafetySheet only grows: correct a row by adding another one');
END;

CREATE TRIGGER "SafetySheet_no_delete" BEFORE DELETE ON "SafetySheet"
BEGIN
  SELECT RAISE(ABORT, 'SafetySheet only grows: correct a row by adding another one');
END;

CREATE TRIGGER "AlertSent_no_update" BEFORE UPDATE ON "AlertSent"
BEGIN
  SELECT RAISE(ABORT, 'AlertSent only grows: correct a row by adding another one');
END;

CREATE TRIGGER "AlertSent_no_delete" BEFORE DELETE ON "AlertSent"
BEGIN
  SELECT RAISE(ABORT, 'AlertSent only grows: correct a row by adding another one');
END;

CREATE TRIGGER "ClockConfirmation_no_update" BEFORE UPDATE ON "ClockConfirmation"
BEGIN
  SELECT RAISE(ABORT, 'ClockConfirmation only grows: correct a row by adding another one');
END;

CREATE TRIGGER "ClockConfirmation_no_delete" BEFORE DELETE ON "ClockConfirmation"
BEGIN
  SELECT RAISE(ABORT, 'ClockConfirmation only grows: correct a row by adding another one');
END;
