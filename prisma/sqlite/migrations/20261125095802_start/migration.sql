-- CreateTable
CREATE TABLE "User" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "emailVerified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "administrator" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "expiresAt" DATETIME NOT NULL,
    "token" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    "ipAddress" TEXT,
    "userAgent" TEXT,
    "userId" TEXT NOT NULL,
    CONSTRAINT "Session_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Account" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "accountId" TEXT NOT NULL,
    "providerId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "accessToken" TEXT,
    "refreshToken" TEXT,
    "idToken" TEXT,
    "accessTokenExpiresAt" DATETIME,
    "refreshTokenExpiresAt" DATETIME,
    "scope" TEXT,
    "password" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "Account_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Verification" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Household" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "fileId" TEXT NOT NULL,
    "ownerId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "profileAt" INTEGER NOT NULL DEFAULT 1,
    "state" TEXT NOT NULL DEFAULT 'open',
    "closedOn" TEXT,
    "createdAt" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "building" TEXT,
    "tenure" TEXT NOT NULL,
    "since" TEXT,
    "timeZone" TEXT NOT NULL,
    "units" TEXT NOT NULL,
    "elevationFt" REAL,
    "emergencyNumber" TEXT,
    "climateKind" TEXT NOT NULL,
    "climateHdd65" TEXT NOT NULL,
    "climateCdd65" TEXT NOT NULL,
    "heatingDesignF" REAL NOT NULL,
    "coolingDesignF" REAL NOT NULL,
    "people" REAL NOT NULL,
    "pets" REAL NOT NULL,
    "petFactor" REAL,
    "smoking" BOOLEAN NOT NULL,
    "carpet" BOOLEAN NOT NULL,
    "hardWater" BOOLEAN NOT NULL,
    "vulnerable" BOOLEAN NOT NULL,
    "accessNote" TEXT,
    CONSTRAINT "Household_ownerId_fkey" FOREIGN KEY ("ownerId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Membership" (
    "householdId" TEXT NOT NULL,
    "accountId" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "since" TEXT NOT NULL,

    PRIMARY KEY ("accountId", "householdId"),
    CONSTRAINT "Membership_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Membership_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "DustEvent" (
    "householdId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "from" TEXT NOT NULL,
    "to" TEXT NOT NULL,

    PRIMARY KEY ("householdId", "position"),
    CONSTRAINT "DustEvent_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "System" (
    "householdId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "delivery" TEXT NOT NULL,
    "heatSource" TEXT,
    "heatInputBtuh" REAL,
    "heatOutputBtuh" REAL,
    "heatEfficiency" REAL,
    "heatRiseF" REAL,
    "heatInstalled" INTEGER,
    "coolSource" TEXT,
    "coolTons" REAL,
    "coolInstalled" INTEGER,
    "fanMode" TEXT,
    "fanMinutesPerHour" REAL,
    "heatSetpointF" REAL,
    "coolSetpointF" REAL,
    "airflowStated" BOOLEAN NOT NULL,
    "airflowHeatCfm" REAL,
    "airflowCoolCfm" REAL,

    PRIMARY KEY ("householdId", "id"),
    CONSTRAINT "System_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Filter" (
    "householdId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "system" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "widthIn" REAL NOT NULL,
    "heightIn" REAL NOT NULL,
    "depthIn" REAL NOT NULL,
    "medium" TEXT NOT NULL,
    "merv" INTEGER,
    "labelLimitDays" INTEGER,
    "placeNote" TEXT,

    PRIMARY KEY ("householdId", "id"),
    CONSTRAINT "Filter_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Device" (
    "householdId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "system" TEXT,
    "made" TEXT,
    "endOfLife" TEXT,

    PRIMARY KEY ("householdId", "id"),
    CONSTRAINT "Device_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Entry" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "householdId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "on" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "task" TEXT,
    "light" TEXT,
    "fittedMedium" TEXT,
    "fittedMerv" INTEGER,
    "doer" TEXT,
    "beforeMedium" TEXT,
    "beforeMerv" INTEGER,
    "byAccount" TEXT,
    "byName" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "door" TEXT NOT NULL,
    "key" TEXT,
    "undoneAt" TEXT,
    "undoneBy" TEXT,
    "correctedBy" TEXT,
    CONSTRAINT "Entry_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Reading" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "householdId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "system" TEXT NOT NULL,
    "from" TEXT NOT NULL,
    "to" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    "heatHours" REAL,
    "coolHours" REAL,
    "fanHours" REAL,
    "therms" REAL,
    "baseTherms" REAL,
    CONSTRAINT "Reading_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PutOff" (
    "householdId" TEXT NOT NULL,
    "task" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "until" TEXT NOT NULL,
    "byAccount" TEXT,
    "byName" TEXT NOT NULL,
    "at" TEXT NOT NULL,

    PRIMARY KEY ("householdId", "task", "subject"),
    CONSTRAINT "PutOff_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Contact" (
    "householdId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT,
    "phone" TEXT,
    "email" TEXT,
    "note" TEXT,

    PRIMARY KEY ("householdId", "id"),
    CONSTRAINT "Contact_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Installation" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "open" BOOLEAN NOT NULL DEFAULT false,
    "touched" INTEGER NOT NULL DEFAULT 0
);

-- CreateTable
CREATE TABLE "Invitation" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "tokenHash" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "householdId" TEXT,
    "role" TEXT,
    "createdBy" TEXT NOT NULL,
    "createdAt" TEXT NOT NULL,
    "expiresAt" TEXT NOT NULL,
    "usedAt" TEXT,
    "revokedAt" TEXT,
    CONSTRAINT "Invitation_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Attempt" (
    "key" TEXT NOT NULL PRIMARY KEY,
    "count" INTEGER NOT NULL,
    "until" TEXT NOT NULL
);

-- CreateIndex
CREATE UNIQUE INDEX "User_email_key" ON "User"("email");

-- CreateIndex
CREATE UNIQUE INDEX "Session_token_key" ON "Session"("token");

-- CreateIndex
CREATE INDEX "Session_userId_idx" ON "Session"("userId");

-- CreateIndex
CREATE INDEX "Account_userId_idx" ON "Account"("userId");

-- CreateIndex
CREATE INDEX "Verification_identifier_idx" ON "Verification"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "Household_ownerId_fileId_key" ON "Household"("ownerId", "fileId");

-- CreateIndex
CREATE INDEX "Membership_householdId_idx" ON "Membership"("householdId");

-- CreateIndex
CREATE INDEX "Entry_householdId_position_idx" ON "Entry"("householdId", "position");

-- CreateIndex
CREATE INDEX "Entry_householdId_on_idx" ON "Entry"("householdId", "on");

-- CreateIndex
CREATE INDEX "Entry_byAccount_idx" ON "Entry"("byAccount");

-- CreateIndex
CREATE UNIQUE INDEX "Entry_householdId_key_key" ON "Entry"("householdId", "key");

-- CreateIndex
CREATE INDEX "Reading_householdId_position_idx" ON "Reading"("householdId", "position");

-- CreateIndex
CREATE UNIQUE INDEX "Invitation_tokenHash_key" ON "Invitation"("tokenHash");

-- CreateIndex
CREATE INDEX "Invitation_householdId_idx" ON "Invitation"("householdId");

-- CreateIndex
CREATE INDEX "Invitation_createdBy_idx" ON "Invitation"("createdBy");

-- CreateIndex
CREATE INDEX "Attempt_until_idx" ON "Attempt"("until");
