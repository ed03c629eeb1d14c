-- CreateTable
CREATE TABLE "User" (
    "id" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "email" TEXT COLLATE "C" NOT NULL,
    "emailVerified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT COLLATE "C",
    "administrator" BOOLEAN NOT NULL DEFAULT false,
    "poolsDust" BOOLEAN NOT NULL DEFAULT false,
    "pooledOn" TEXT COLLATE "C",
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "User_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT COLLATE "C" NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "token" TEXT COLLATE "C" NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,
    "ipAddress" TEXT COLLATE "C",
    "userAgent" TEXT COLLATE "C",
    "userId" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Account" (
    "id" TEXT COLLATE "C" NOT NULL,
    "accountId" TEXT COLLATE "C" NOT NULL,
    "providerId" TEXT COLLATE "C" NOT NULL,
    "userId" TEXT COLLATE "C" NOT NULL,
    "accessToken" TEXT COLLATE "C",
    "refreshToken" TEXT COLLATE "C",
    "idToken" TEXT COLLATE "C",
    "accessTokenExpiresAt" TIMESTAMP(3),
    "refreshTokenExpiresAt" TIMESTAMP(3),
    "scope" TEXT COLLATE "C",
    "password" TEXT COLLATE "C",
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Verification" (
    "id" TEXT COLLATE "C" NOT NULL,
    "identifier" TEXT COLLATE "C" NOT NULL,
    "value" TEXT COLLATE "C" NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Verification_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "EpisodeEvent" (
    "id" TEXT COLLATE "C" NOT NULL,
    "householdId" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "on" TEXT COLLATE "C" NOT NULL,
    "minute" INTEGER NOT NULL,
    "note" TEXT COLLATE "C",
    "byAccount" TEXT COLLATE "C",
    "byName" TEXT COLLATE "C" NOT NULL,
    "at" TEXT COLLATE "C" NOT NULL,
    "door" TEXT COLLATE "C" NOT NULL,
    "key" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "EpisodeEvent_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Brief" (
    "id" TEXT COLLATE "C" NOT NULL,
    "householdId" TEXT COLLATE "C" NOT NULL,
    "on" TEXT COLLATE "C" NOT NULL,
    "page" TEXT COLLATE "C" NOT NULL,
    "severity" INTEGER,
    "outcome" TEXT COLLATE "C",
    "roomF" DOUBLE PRECISION,
    "byAccount" TEXT COLLATE "C",
    "byName" TEXT COLLATE "C" NOT NULL,
    "at" TEXT COLLATE "C" NOT NULL,
    "door" TEXT COLLATE "C" NOT NULL,
    "tokenHash" TEXT COLLATE "C",
    "expiresAt" TEXT COLLATE "C",
    "key" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Brief_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Household" (
    "id" TEXT COLLATE "C" NOT NULL,
    "fileId" TEXT COLLATE "C" NOT NULL,
    "ownerId" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "profileAt" INTEGER NOT NULL DEFAULT 1,
    "state" TEXT COLLATE "C" NOT NULL DEFAULT 'open',
    "closedOn" TEXT COLLATE "C",
    "createdAt" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "building" TEXT COLLATE "C",
    "tenure" TEXT COLLATE "C" NOT NULL,
    "since" TEXT COLLATE "C",
    "timeZone" TEXT COLLATE "C" NOT NULL,
    "units" TEXT COLLATE "C" NOT NULL,
    "elevationFt" DOUBLE PRECISION,
    "emergencyNumber" TEXT COLLATE "C",
    "climateKind" TEXT COLLATE "C" NOT NULL,
    "climateHdd65" TEXT COLLATE "C" NOT NULL,
    "climateCdd65" TEXT COLLATE "C" NOT NULL,
    "heatingDesignF" DOUBLE PRECISION NOT NULL,
    "coolingDesignF" DOUBLE PRECISION NOT NULL,
    "people" DOUBLE PRECISION NOT NULL,
    "pets" DOUBLE PRECISION NOT NULL,
    "petFactor" DOUBLE PRECISION,
    "smoking" BOOLEAN NOT NULL,
    "carpet" BOOLEAN NOT NULL,
    "hardWater" BOOLEAN NOT NULL,
    "vulnerable" BOOLEAN NOT NULL,
    "accessNote" TEXT COLLATE "C",
    "assumed" TEXT COLLATE "C",

    CONSTRAINT "Household_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Membership" (
    "householdId" TEXT COLLATE "C" NOT NULL,
    "accountId" TEXT COLLATE "C" NOT NULL,
    "role" TEXT COLLATE "C" NOT NULL,
    "since" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Membership_pkey" PRIMARY KEY ("accountId","householdId")
);

-- CreateTable
CREATE TABLE "DustEvent" (
    "householdId" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "from" TEXT COLLATE "C" NOT NULL,
    "to" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "DustEvent_pkey" PRIMARY KEY ("householdId","position")
);

-- CreateTable
CREATE TABLE "System" (
    "householdId" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "delivery" TEXT COLLATE "C" NOT NULL,
    "heatSource" TEXT COLLATE "C",
    "heatInputBtuh" DOUBLE PRECISION,
    "heatOutputBtuh" DOUBLE PRECISION,
    "heatEfficiency" DOUBLE PRECISION,
    "heatRiseF" DOUBLE PRECISION,
    "heatInstalled" INTEGER,
    "coolSource" TEXT COLLATE "C",
    "coolTons" DOUBLE PRECISION,
    "coolInstalled" INTEGER,
    "fanMode" TEXT COLLATE "C",
    "fanMinutesPerHour" DOUBLE PRECISION,
    "heatSetpointF" DOUBLE PRECISION,
    "coolSetpointF" DOUBLE PRECISION,
    "airflowStated" BOOLEAN NOT NULL,
    "airflowHeatCfm" DOUBLE PRECISION,
    "airflowCoolCfm" DOUBLE PRECISION,
    "dustMedian" DOUBLE PRECISION,
    "dustSpread" DOUBLE PRECISION,
    "dustSystems" INTEGER,

    CONSTRAINT "System_pkey" PRIMARY KEY ("householdId","id")
);

-- CreateTable
CREATE TABLE "Filter" (
    "householdId" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "system" TEXT COLLATE "C" NOT NULL,
    "place" TEXT COLLATE "C" NOT NULL,
    "widthIn" DOUBLE PRECISION NOT NULL,
    "heightIn" DOUBLE PRECISION NOT NULL,
    "depthIn" DOUBLE PRECISION NOT NULL,
    "medium" TEXT COLLATE "C" NOT NULL,
    "merv" INTEGER,
    "labelLimitDays" INTEGER,
    "placeNote" TEXT COLLATE "C",

    CONSTRAINT "Filter_pkey" PRIMARY KEY ("householdId","id")
);

-- CreateTable
CREATE TABLE "Device" (
    "householdId" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "system" TEXT COLLATE "C",
    "made" TEXT COLLATE "C",
    "endOfLife" TEXT COLLATE "C",

    CONSTRAINT "Device_pkey" PRIMARY KEY ("householdId","id")
);

-- CreateTable
CREATE TABLE "Entry" (
    "id" TEXT COLLATE "C" NOT NULL,
    "householdId" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "on" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "subject" TEXT COLLATE "C" NOT NULL,
    "task" TEXT COLLATE "C",
    "light" TEXT COLLATE "C",
    "fittedMedium" TEXT COLLATE "C",
    "fittedMerv" INTEGER,
    "doer" TEXT COLLATE "C",
    "beforeMedium" TEXT COLLATE "C",
    "beforeMerv" INTEGER,
    "byAccount" TEXT COLLATE "C",
    "byName" TEXT COLLATE "C" NOT NULL,
    "at" TEXT COLLATE "C" NOT NULL,
    "door" TEXT COLLATE "C" NOT NULL,
    "key" TEXT COLLATE "C",
    "undoneAt" TEXT COLLATE "C",
    "undoneBy" TEXT COLLATE "C",
    "correctedBy" TEXT COLLATE "C",

    CONSTRAINT "Entry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Reading" (
    "id" TEXT COLLATE "C" NOT NULL,
    "householdId" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "system" TEXT COLLATE "C" NOT NULL,
    "from" TEXT COLLATE "C" NOT NULL,
    "to" TEXT COLLATE "C" NOT NULL,
    "source" TEXT COLLATE "C" NOT NULL,
    "heatHours" DOUBLE PRECISION,
    "coolHours" DOUBLE PRECISION,
    "fanHours" DOUBLE PRECISION,
    "therms" DOUBLE PRECISION,
    "baseTherms" DOUBLE PRECISION,

    CONSTRAINT "Reading_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PutOff" (
    "householdId" TEXT COLLATE "C" NOT NULL,
    "task" TEXT COLLATE "C" NOT NULL,
    "subject" TEXT COLLATE "C" NOT NULL,
    "until" TEXT COLLATE "C" NOT NULL,
    "byAccount" TEXT COLLATE "C",
    "byName" TEXT COLLATE "C" NOT NULL,
    "at" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "PutOff_pkey" PRIMARY KEY ("householdId","task","subject")
);

-- CreateTable
CREATE TABLE "Contact" (
    "householdId" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C",
    "phone" TEXT COLLATE "C",
    "email" TEXT COLLATE "C",
    "note" TEXT COLLATE "C",

    CONSTRAINT "Contact_pkey" PRIMARY KEY ("householdId","id")
);

-- CreateTable
CREATE TABLE "Installation" (
    "id" INTEGER NOT NULL,
    "open" BOOLEAN NOT NULL DEFAULT false,
    "touched" INTEGER NOT NULL DEFAULT 0,

    CONSTRAINT "Installation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Invitation" (
    "id" TEXT COLLATE "C" NOT NULL,
    "tokenHash" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "householdId" TEXT COLLATE "C",
    "role" TEXT COLLATE "C",
    "building" TEXT COLLATE "C",
    "createdBy" TEXT COLLATE "C" NOT NULL,
    "createdAt" TEXT COLLATE "C" NOT NULL,
    "expiresAt" TEXT COLLATE "C" NOT NULL,
    "usedAt" TEXT COLLATE "C",
    "revokedAt" TEXT COLLATE "C",

    CONSTRAINT "Invitation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Attempt" (
    "key" TEXT COLLATE "C" NOT NULL,
    "count" INTEGER NOT NULL,
    "until" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Attempt_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "Draft" (
    "accountId" TEXT COLLATE "C" NOT NULL,
    "step" TEXT COLLATE "C" NOT NULL,
    "answers" TEXT COLLATE "C" NOT NULL,
    "savedAt" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Draft_pkey" PRIMARY KEY ("accountId")
);

-- CreateTable
CREATE TABLE "Feed" (
    "id" TEXT COLLATE "C" NOT NULL,
    "secretHash" TEXT COLLATE "C" NOT NULL,
    "accountId" TEXT COLLATE "C" NOT NULL,
    "householdId" TEXT COLLATE "C",
    "createdAt" TEXT COLLATE "C" NOT NULL,
    "fetchedOn" TEXT COLLATE "C",

    CONSTRAINT "Feed_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Reminding" (
    "accountId" TEXT COLLATE "C" NOT NULL,
    "mail" BOOLEAN NOT NULL,
    "push" BOOLEAN NOT NULL DEFAULT false,
    "weekday" INTEGER NOT NULL,
    "hour" INTEGER NOT NULL,
    "timeZone" TEXT COLLATE "C" NOT NULL,
    "since" TEXT COLLATE "C" NOT NULL,
    "digestOn" TEXT COLLATE "C" NOT NULL,
    "nextAt" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Reminding_pkey" PRIMARY KEY ("accountId")
);

-- CreateTable
CREATE TABLE "Outgoing" (
    "id" TEXT COLLATE "C" NOT NULL,
    "key" TEXT COLLATE "C" NOT NULL,
    "channel" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "accountId" TEXT COLLATE "C",
    "to" TEXT COLLATE "C" NOT NULL,
    "subject" TEXT COLLATE "C" NOT NULL,
    "text" TEXT COLLATE "C" NOT NULL,
    "html" TEXT COLLATE "C" NOT NULL,
    "createdAt" TEXT COLLATE "C" NOT NULL,
    "nextTryAt" TEXT COLLATE "C" NOT NULL,
    "tries" INTEGER NOT NULL DEFAULT 0,
    "leaseBy" TEXT COLLATE "C",
    "leaseUntil" TEXT COLLATE "C",
    "sendingAt" TEXT COLLATE "C",
    "interrupted" INTEGER NOT NULL DEFAULT 0,
    "sentAt" TEXT COLLATE "C",
    "failedAt" TEXT COLLATE "C",
    "problem" TEXT COLLATE "C",

    CONSTRAINT "Outgoing_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Reminded" (
    "id" TEXT COLLATE "C" NOT NULL,
    "householdId" TEXT COLLATE "C" NOT NULL,
    "task" TEXT COLLATE "C" NOT NULL,
    "subject" TEXT COLLATE "C" NOT NULL,
    "latest" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "accountId" TEXT COLLATE "C",
    "name" TEXT COLLATE "C" NOT NULL,
    "at" TEXT COLLATE "C" NOT NULL,
    "channel" TEXT COLLATE "C" NOT NULL,
    "messageId" TEXT COLLATE "C",

    CONSTRAINT "Reminded_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "MailLink" (
    "tokenHash" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "accountId" TEXT COLLATE "C",
    "email" TEXT COLLATE "C",
    "expiresAt" TEXT COLLATE "C" NOT NULL,
    "usedAt" TEXT COLLATE "C",

    CONSTRAINT "MailLink_pkey" PRIMARY KEY ("tokenHash")
);

-- CreateTable
CREATE TABLE "PushTarget" (
    "id" TEXT COLLATE "C" NOT NULL,
    "accountId" TEXT COLLATE "C" NOT NULL,
    "endpoint" TEXT COLLATE "C" NOT NULL,
    "p256dh" TEXT COLLATE "C" NOT NULL,
    "auth" TEXT COLLATE "C" NOT NULL,
    "createdAt" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "PushTarget_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Away" (
    "householdId" TEXT COLLATE "C" NOT NULL,
    "from" TEXT COLLATE "C" NOT NULL,
    "until" TEXT COLLATE "C" NOT NULL,
    "byAccount" TEXT COLLATE "C",
    "byName" TEXT COLLATE "C" NOT NULL,
    "at" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Away_pkey" PRIMARY KEY ("householdId")
);

-- CreateTable
CREATE TABLE "Pause" (
    "id" TEXT COLLATE "C" NOT NULL,
    "householdId" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "task" TEXT COLLATE "C",
    "subject" TEXT COLLATE "C",
    "from" TEXT COLLATE "C" NOT NULL,
    "until" TEXT COLLATE "C" NOT NULL,
    "byAccount" TEXT COLLATE "C",
    "byName" TEXT COLLATE "C" NOT NULL,
    "at" TEXT COLLATE "C" NOT NULL,
    "door" TEXT COLLATE "C" NOT NULL,
    "endedAt" TEXT COLLATE "C",
    "endedBy" TEXT COLLATE "C",

    CONSTRAINT "Pause_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RenterLink" (
    "id" TEXT COLLATE "C" NOT NULL,
    "householdId" TEXT COLLATE "C" NOT NULL,
    "tokenHash" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "createdBy" TEXT COLLATE "C",
    "createdName" TEXT COLLATE "C" NOT NULL,
    "createdAt" TEXT COLLATE "C" NOT NULL,
    "lastDay" TEXT COLLATE "C" NOT NULL,
    "expiresAt" TEXT COLLATE "C" NOT NULL,
    "revokedAt" TEXT COLLATE "C",

    CONSTRAINT "RenterLink_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Message" (
    "id" TEXT COLLATE "C" NOT NULL,
    "householdId" TEXT COLLATE "C" NOT NULL,
    "text" TEXT COLLATE "C" NOT NULL,
    "byAccount" TEXT COLLATE "C",
    "byName" TEXT COLLATE "C" NOT NULL,
    "linkId" TEXT COLLATE "C",
    "at" TEXT COLLATE "C" NOT NULL,
    "door" TEXT COLLATE "C" NOT NULL,
    "readAt" TEXT COLLATE "C",

    CONSTRAINT "Message_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Photo" (
    "id" TEXT COLLATE "C" NOT NULL,
    "householdId" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "subject" TEXT COLLATE "C" NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "bytes" INTEGER NOT NULL,
    "byAccount" TEXT COLLATE "C",
    "byName" TEXT COLLATE "C" NOT NULL,
    "linkId" TEXT COLLATE "C",
    "at" TEXT COLLATE "C" NOT NULL,
    "door" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Photo_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Stock" (
    "accountId" TEXT COLLATE "C" NOT NULL,
    "size" TEXT COLLATE "C" NOT NULL,
    "medium" TEXT COLLATE "C" NOT NULL,
    "merv" INTEGER NOT NULL,
    "onHand" INTEGER NOT NULL,
    "perBox" INTEGER NOT NULL,

    CONSTRAINT "Stock_pkey" PRIMARY KEY ("accountId","size","medium","merv")
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
CREATE INDEX "EpisodeEvent_householdId_minute_idx" ON "EpisodeEvent"("householdId", "minute");

-- CreateIndex
CREATE UNIQUE INDEX "EpisodeEvent_householdId_key_key" ON "EpisodeEvent"("householdId", "key");

-- CreateIndex
CREATE UNIQUE INDEX "Brief_tokenHash_key" ON "Brief"("tokenHash");

-- CreateIndex
CREATE INDEX "Brief_householdId_at_idx" ON "Brief"("householdId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "Brief_householdId_key_key" ON "Brief"("householdId", "key");

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
CREATE INDEX "Reminded_messageId_idx" ON "Reminded"("messageId");

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

-- CreateIndex
CREATE INDEX "Pause_householdId_at_idx" ON "Pause"("householdId", "at");

-- CreateIndex
CREATE UNIQUE INDEX "RenterLink_tokenHash_key" ON "RenterLink"("tokenHash");

-- CreateIndex
CREATE INDEX "RenterLink_householdId_idx" ON "RenterLink"("householdId");

-- CreateIndex
CREATE INDEX "Message_householdId_at_idx" ON "Message"("householdId", "at");

-- CreateIndex
CREATE INDEX "Photo_householdId_at_idx" ON "Photo"("householdId", "at");

-- AddForeignKey
ALTER TABLE "Session" ADD CONSTRAINT "Session_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Account" ADD CONSTRAINT "Account_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "EpisodeEvent" ADD CONSTRAINT "EpisodeEvent_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Brief" ADD CONSTRAINT "Brief_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Household" ADD CONSTRAINT "Household_ownerId_fkey" FOREIGN KEY ("ownerId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Membership" ADD CONSTRAINT "Membership_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Membership" ADD CONSTRAINT "Membership_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "DustEvent" ADD CONSTRAINT "DustEvent_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "System" ADD CONSTRAINT "System_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Filter" ADD CONSTRAINT "Filter_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Device" ADD CONSTRAINT "Device_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Entry" ADD CONSTRAINT "Entry_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Reading" ADD CONSTRAINT "Reading_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PutOff" ADD CONSTRAINT "PutOff_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Contact" ADD CONSTRAINT "Contact_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Invitation" ADD CONSTRAINT "Invitation_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Draft" ADD CONSTRAINT "Draft_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Feed" ADD CONSTRAINT "Feed_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Feed" ADD CONSTRAINT "Feed_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Reminding" ADD CONSTRAINT "Reminding_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Outgoing" ADD CONSTRAINT "Outgoing_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Reminded" ADD CONSTRAINT "Reminded_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "MailLink" ADD CONSTRAINT "MailLink_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PushTarget" ADD CONSTRAINT "PushTarget_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Away" ADD CONSTRAINT "Away_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Pause" ADD CONSTRAINT "Pause_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RenterLink" ADD CONSTRAINT "RenterLink_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Message" ADD CONSTRAINT "Message_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Photo" ADD CONSTRAINT "Photo_householdId_fkey" FOREIGN KEY ("householdId") REFERENCES "Household"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Stock" ADD CONSTRAINT "Stock_accountId_fkey" FOREIGN KEY ("accountId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;


