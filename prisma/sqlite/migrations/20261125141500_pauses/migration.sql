-- CreateTable
CREATE TABLE "Pause" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "householdId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "task" TEXT,
    "subject" TEXT,
    "from" TEXT NOT NULL,
    "until" TEXT NOT NULL,
    "byAccount" TEXT,
    "byName" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "door" TEXT NOT NULL,
    "endedAt" TEXT,
    "endedBy" TEXT,
    CONSTRAINT "Pause_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Pause_householdId_at_idx" ON "Pause"("householdId", "at");

-- What is put off and who is away now, as lines of the log.
INSERT INTO "Pause" ("id", "householdId", "kind", "task", "subject", "from", "until", "byAccount", "byName", "at", "door")
SELECT lower(hex(randomblob(8))), "householdId", 'put-off', "task", "subject", substr("at", 1, 10), "until", "byAccount", "byName", "at", 'page' FROM "PutOff";

INSERT INTO "Pause" ("id", "householdId", "kind", "from", "until", "byAccount", "byName", "at", "door")
SELECT lower(hex(randomblob(8))), "householdId", 'away', "from", "until", "byAccount", "byName", "at", 'page' FROM "Away";
