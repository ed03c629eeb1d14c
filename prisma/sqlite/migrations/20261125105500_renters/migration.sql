-- CreateTable
CREATE TABLE "RenterLink" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "householdId" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "createdBy" TEXT,
    "createdName" TEXT NOT NULL,
    "createdAt" TEXT NOT NULL,
    "lastDay" TEXT NOT NULL,
    "expiresAt" TEXT NOT NULL,
    "revokedAt" TEXT,
    CONSTRAINT "RenterLink_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Message" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "householdId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "byAccount" TEXT,
    "byName" TEXT NOT NULL,
    "linkId" TEXT,
    "at" TEXT NOT NULL,
    "door" TEXT NOT NULL,
    "readAt" TEXT,
    CONSTRAINT "Message_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Photo" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "householdId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "bytes" INTEGER NOT NULL,
    "byAccount" TEXT,
    "byName" TEXT NOT NULL,
    "linkId" TEXT,
    "at" TEXT NOT NULL,
    "door" TEXT NOT NULL,
    CONSTRAINT "Photo_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "RenterLink_tokenHash_key" ON "RenterLink"("tokenHash");

-- CreateIndex
CREATE INDEX "RenterLink_householdId_idx" ON "RenterLink"("householdId");

-- CreateIndex
CREATE INDEX "Message_householdId_at_idx" ON "Message"("householdId", "at");

-- CreateIndex
CREATE INDEX "Photo_householdId_at_idx" ON "Photo"("householdId", "at");


