-- CreateTable
CREATE TABLE "Person" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "nameKey" TEXT NOT NULL,
    "passwordHash" TEXT,
    "pinHash" TEXT,
    "madeBy" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL CHECK ("madeAt" = CAST("madeAt" AS BIGINT)),
    "disabledAt" BIGINT CHECK ("disabledAt" = CAST("disabledAt" AS BIGINT)),
    "changes" BIGINT NOT NULL DEFAULT 0 CHECK ("changes" >= 0 AND "changes" = CAST("changes" AS BIGINT))
);

-- CreateTable
CREATE TABLE "Membership" (
    "shopId" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "givenBy" TEXT NOT NULL,
    "givenAt" BIGINT NOT NULL CHECK ("givenAt" = CAST("givenAt" AS BIGINT)),

    PRIMARY KEY ("shopId", "personId"),
    CONSTRAINT "Membership_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "Membership_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Device" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "tokenHash" TEXT NOT NULL,
    "personId" TEXT,
    "inShop" TEXT,
    "name" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL CHECK ("madeAt" = CAST("madeAt" AS BIGINT)),
    "seenAt" BIGINT NOT NULL CHECK ("seenAt" = CAST("seenAt" AS BIGINT)),
    "lostAt" BIGINT CHECK ("lostAt" = CAST("lostAt" AS BIGINT)),
    CONSTRAINT "Device_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "tokenHash" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "deviceId" TEXT NOT NULL,
    "how" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL CHECK ("madeAt" = CAST("madeAt" AS BIGINT)),
    "seenAt" BIGINT NOT NULL CHECK ("seenAt" = CAST("seenAt" AS BIGINT)),
    "endsAt" BIGINT NOT NULL CHECK ("endsAt" = CAST("endsAt" AS BIGINT)),
    CONSTRAINT "Session_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT,
    CONSTRAINT "Session_deviceId_fkey" FOREIGN KEY ("deviceId") REFERENCES "Device" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "Invitation" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "tokenHash" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "inShop" TEXT,
    "personId" TEXT,
    "name" TEXT,
    "role" TEXT,
    "madeBy" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL CHECK ("madeAt" = CAST("madeAt" AS BIGINT)),
    "endsAt" BIGINT NOT NULL CHECK ("endsAt" = CAST("endsAt" AS BIGINT)),
    "usedAt" BIGINT CHECK ("usedAt" = CAST("usedAt" AS BIGINT))
);

-- CreateTable
CREATE TABLE "Passkey" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "personId" TEXT NOT NULL,
    "publicKey" BLOB NOT NULL,
    "counter" BIGINT NOT NULL CHECK ("counter" >= 0 AND "counter" = CAST("counter" AS BIGINT)),
    "transports" JSONB,
    "name" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL CHECK ("madeAt" = CAST("madeAt" AS BIGINT)),
    "usedAt" BIGINT CHECK ("usedAt" = CAST("usedAt" AS BIGINT)),
    CONSTRAINT "Passkey_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE RESTRICT ON UPDATE RESTRICT
);

-- CreateTable
CREATE TABLE "AccessNote" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "inShop" TEXT,
    "personId" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "about" TEXT,
    "actor" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL CHECK ("recordedAt" = CAST("recordedAt" AS BIGINT))
);

-- CreateIndex
CREATE UNIQUE INDEX "Person_nameKey_key" ON "Person"("nameKey");

-- CreateIndex
CREATE UNIQUE INDEX "Device_tokenHash_key" ON "Device"("tokenHash");

-- CreateIndex
CREATE UNIQUE INDEX "Session_tokenHash_key" ON "Session"("tokenHash");

-- CreateIndex
CREATE INDEX "Session_personId_idx" ON "Session"("personId");

-- CreateIndex
CREATE UNIQUE INDEX "Invitation_tokenHash_key" ON "Invitation"("tokenHash");

CREATE TRIGGER "AccessNote_no_update" BEFORE UPDATE ON "AccessNote"
BEGIN
  SELECT RAISE(ABORT, 'AccessNote only grows: correct a row by adding another one');
END;

CREATE TRIGGER "AccessNote_no_delete" BEFORE DELETE ON "AccessNote"
BEGIN
  SELECT RAISE(ABORT, 'AccessNote only grows: correct a row by adding another one');
END;
