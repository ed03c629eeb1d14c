-- CreateTable
CREATE TABLE "ApiToken" (
    "id" TEXT COLLATE "C" NOT NULL,
    "tokenHash" TEXT COLLATE "C" NOT NULL,
    "accountId" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "createdAt" TEXT COLLATE "C" NOT NULL,
    "lastUsedOn" TEXT COLLATE "C",
    "revokedAt" TEXT COLLATE "C",

    CONSTRAINT "ApiToken_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "ApiToken_tokenHash_key" ON "ApiToken"("tokenHash");

-- CreateIndex
CREATE INDEX "ApiToken_accountId_idx" ON "ApiToken"("accountId");

-- AddForeignKey
ALTER TABLE "ApiToken" ADD CONSTRAINT "ApiToken_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;
