-- CreateTable
CREATE TABLE "TrialCue" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "lengthMm" REAL NOT NULL,
    "massG" REAL NOT NULL,
    "buttDiameterMm" REAL NOT NULL,
    "tipDiameterMm" REAL NOT NULL,
    "balanceFromButtMm" REAL NOT NULL,
    "notes" TEXT NOT NULL DEFAULT '',
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "retiredAt" DATETIME,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Trial" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "playerId" TEXT NOT NULL,
    "plan" JSONB NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    "endedAt" DATETIME,
    CONSTRAINT "Trial_playerId_fkey" FOREIGN KEY ("playerId") REFERENCES "Player" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "TrialShot" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "trialId" TEXT NOT NULL,
    "shotNumber" INTEGER NOT NULL,
    "letter" TEXT NOT NULL,
    "isPotted" BOOLEAN NOT NULL,
    "line" TEXT,
    "position" TEXT,
    "place" TEXT,
    "requestKey" TEXT NOT NULL,
    "undoneAt" DATETIME,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "TrialShot_trialId_fkey" FOREIGN KEY ("trialId") REFERENCES "Trial" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "TrialWish" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "trialId" TEXT NOT NULL,
    "fittingId" TEXT NOT NULL,
    "field" TEXT NOT NULL,
    "before" TEXT,
    "after" TEXT NOT NULL,
    "offer" JSONB NOT NULL,
    "requestKey" TEXT NOT NULL,
    "appliedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "revertedAt" DATETIME,
    CONSTRAINT "TrialWish_trialId_fkey" FOREIGN KEY ("trialId") REFERENCES "Trial" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "TrialWish_fittingId_fkey" FOREIGN KEY ("fittingId") REFERENCES "Fitting" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "TrialCue_retiredAt_name_idx" ON "TrialCue"("retiredAt", "name");

-- CreateIndex
CREATE UNIQUE INDEX "Trial_number_key" ON "Trial"("number");

-- CreateIndex
CREATE INDEX "Trial_playerId_createdAt_idx" ON "Trial"("playerId", "createdAt");

-- CreateIndex
CREATE INDEX "Trial_updatedAt_idx" ON "Trial"("updatedAt");

-- CreateIndex
CREATE UNIQUE INDEX "TrialShot_place_key" ON "TrialShot"("place");

-- CreateIndex
CREATE UNIQUE INDEX "TrialShot_requestKey_key" ON "TrialShot"("requestKey");

-- CreateIndex
CREATE INDEX "TrialShot_trialId_shotNumber_idx" ON "TrialShot"("trialId", "shotNumber");

-- CreateIndex
CREATE UNIQUE INDEX "TrialWish_requestKey_key" ON "TrialWish"("requestKey");

-- CreateIndex
CREATE INDEX "TrialWish_trialId_idx" ON "TrialWish"("trialId");

-- CreateIndex
CREATE INDEX "TrialWish_fittingId_idx" ON "TrialWish"("fittingId");
