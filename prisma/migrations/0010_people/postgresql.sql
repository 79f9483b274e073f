-- CreateTable
CREATE TABLE "Person" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "nameKey" TEXT NOT NULL,
    "passwordHash" TEXT,
    "pinHash" TEXT,
    "madeBy" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL,
    "disabledAt" BIGINT,
    "changes" BIGINT NOT NULL DEFAULT 0 CHECK ("changes" >= 0),

    CONSTRAINT "Person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Membership" (
    "shopId" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "givenBy" TEXT NOT NULL,
    "givenAt" BIGINT NOT NULL,

    CONSTRAINT "Membership_pkey" PRIMARY KEY ("shopId","personId")
);

-- CreateTable
CREATE TABLE "Device" (
    "id" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "personId" TEXT,
    "inShop" TEXT,
    "name" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL,
    "seenAt" BIGINT NOT NULL,
    "lostAt" BIGINT,

    CONSTRAINT "Device_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "deviceId" TEXT NOT NULL,
    "how" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL,
    "seenAt" BIGINT NOT NULL,
    "endsAt" BIGINT NOT NULL,

    CONSTRAINT "Session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Invitation" (
    "id" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "inShop" TEXT,
    "personId" TEXT,
    "name" TEXT,
    "role" TEXT,
    "madeBy" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL,
    "endsAt" BIGINT NOT NULL,
    "usedAt" BIGINT,

    CONSTRAINT "Invitation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Passkey" (
    "id" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "publicKey" BYTEA NOT NULL,
    "counter" BIGINT NOT NULL CHECK ("counter" >= 0),
    "transports" JSON,
    "name" TEXT NOT NULL,
    "madeAt" BIGINT NOT NULL,
    "usedAt" BIGINT,

    CONSTRAINT "Passkey_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "AccessNote" (
    "id" TEXT NOT NULL,
    "inShop" TEXT,
    "personId" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "about" TEXT,
    "actor" TEXT NOT NULL,
    "recordedAt" BIGINT NOT NULL,

    CONSTRAINT "AccessNote_pkey" PRIMARY KEY ("id")
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

-- AddForeignKey
ALTER TABLE "Membership" ADD CONSTRAINT "Membership_shopId_fkey" FOREIGN KEY ("shopId") REFERENCES "Shop"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Membership" ADD CONSTRAINT "Membership_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Device" ADD CONSTRAINT "Device_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Session" ADD CONSTRAINT "Session_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Session" ADD CONSTRAINT "Session_deviceId_fkey" FOREIGN KEY ("deviceId") REFERENCES "Device"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

-- AddForeignKey
ALTER TABLE "Passkey" ADD CONSTRAINT "Passkey_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE RESTRICT ON UPDATE RESTRICT;

CREATE TRIGGER "AccessNote_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "AccessNote"
  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();
