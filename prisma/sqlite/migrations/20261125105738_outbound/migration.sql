-- CreateTable
CREATE TABLE "Feed" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "secretHash" TEXT NOT NULL,
    "accountId" TEXT NOT NULL,
    "householdId" TEXT,
    "createdAt" TEXT NOT NULL,
    "fetchedOn" TEXT,
    CONSTRAINT "Feed_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Feed_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Reminding" (
    "accountId" TEXT NOT NULL PRIMARY KEY,
    "mail" BOOLEAN NOT NULL,
    "push" BOOLEAN NOT NULL DEFAULT false,
    "weekday" INTEGER NOT NULL,
    "hour" INTEGER NOT NULL,
    "timeZone" TEXT NOT NULL,
    "since" TEXT NOT NULL,
    "digestOn" TEXT NOT NULL,
    "nextAt" TEXT NOT NULL,
    CONSTRAINT "Reminding_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Outgoing" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "key" TEXT NOT NULL,
    "channel" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "accountId" TEXT,
    "to" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "html" TEXT NOT NULL,
    "createdAt" TEXT NOT NULL,
    "nextTryAt" TEXT NOT NULL,
    "tries" INTEGER NOT NULL DEFAULT 0,
    "leaseBy" TEXT,
    "leaseUntil" TEXT,
    "sendingAt" TEXT,
    "interrupted" INTEGER NOT NULL DEFAULT 0,
    "sentAt" TEXT,
    "failedAt" TEXT,
    "problem" TEXT,
    CONSTRAINT "Outgoing_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Reminded" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "householdId" TEXT NOT NULL,
    "task" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "latest" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "accountId" TEXT,
    "name" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "channel" TEXT NOT NULL,
    CONSTRAINT "Reminded_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MailLink" (
    "tokenHash" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "accountId" TEXT,
    "email" TEXT,
    "expiresAt" TEXT NOT NULL,
    "usedAt" TEXT,
    CONSTRAINT "MailLink_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PushTarget" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "accountId" TEXT NOT NULL,
    "endpoint" TEXT NOT NULL,
    "p256dh" TEXT NOT NULL,
    "auth" TEXT NOT NULL,
    "createdAt" TEXT NOT NULL,
    CONSTRAINT "PushTarget_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Away" (
    "householdId" TEXT NOT NULL PRIMARY KEY,
    "from" TEXT NOT NULL,
    "until" TEXT NOT NULL,
    "byAccount" TEXT,
    "byName" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    CONSTRAINT "Away_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "Feed_secretHash_key" ON "Feed"("secretHash");

-- CreateIndex
CREATE INDEX "Feed_accountId_idx" ON "Feed"("accountId");

-- CreateIndex
CREATE INDEX "Reminding_nextAt_idx" ON "Reminding"("nextAt");

-- CreateIndex
CREATE UNIQUE INDEX "Outgoing_key_key" ON "Outgoing"("key");

-- CreateIndex
CREATE INDEX "Outgoing_sentAt_failedAt_nextTryAt_idx" ON "Outgoing"("sentAt", "failedAt", "nextTryAt");

-- CreateIndex
CREATE INDEX "Outgoing_accountId_idx" ON "Outgoing"("accountId");

-- CreateIndex
CREATE INDEX "Reminded_householdId_at_idx" ON "Reminded"("householdId", "at");

-- CreateIndex
CREATE INDEX "Reminded_accountId_householdId_idx" ON "Reminded"("accountId", "householdId");

-- CreateIndex
CREATE INDEX "MailLink_accountId_idx" ON "MailLink"("accountId");

-- CreateIndex
CREATE INDEX "MailLink_expiresAt_idx" ON "MailLink"("expiresAt");

-- CreateIndex
CREATE UNIQUE INDEX "PushTarget_endpoint_key" ON "PushTarget"("endpoint");

-- CreateIndex
CREATE INDEX "PushTarget_accountId_idx" ON "PushTarget"("accountId");
