-- CreateTable
CREATE TABLE "EpisodeEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "householdId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "on" TEXT NOT NULL,
    "minute" INTEGER NOT NULL,
    "note" TEXT,
    "byAccount" TEXT,
    "byName" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "door" TEXT NOT NULL,
    "key" TEXT NOT NULL,
    CONSTRAINT "EpisodeEvent_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Brief" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "householdId" TEXT NOT NULL,
    "on" TEXT NOT NULL,
    "page" TEXT NOT NULL,
    "severity" INTEGER,
    "outcome" TEXT,
    "roomF" REAL,
    "byAccount" TEXT,
    "byName" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "door" TEXT NOT NULL,
    "tokenHash" TEXT,
    "expiresAt" TEXT,
    "key" TEXT NOT NULL,
    CONSTRAINT "Brief_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "EpisodeEvent_householdId_minute_idx" ON "EpisodeEvent"("householdId", "minute");

-- CreateIndex
CREATE UNIQUE INDEX "EpisodeEvent_householdId_key_key" ON "EpisodeEvent"("householdId", "key");

-- CreateIndex
CREATE UNIQUE INDEX "Brief_tokenHash_key" ON "Brief"("tokenHash");

-- CreateIndex
CREATE INDEX "Brief_householdId_at_idx" ON "Brief"("householdId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "Brief_householdId_key_key" ON "Brief"("householdId", "key");


