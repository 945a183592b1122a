-- CreateTable
CREATE TABLE "Player" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "searchName" TEXT NOT NULL,
    "birthDate" TEXT,
    "sex" TEXT,
    "hand" TEXT,
    "notes" TEXT NOT NULL DEFAULT '',
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Fitting" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "playerId" TEXT NOT NULL,
    "answers" JSONB NOT NULL,
    "basedOnFittingId" TEXT,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    "finishedAt" DATETIME,
    CONSTRAINT "Fitting_playerId_fkey" FOREIGN KEY ("playerId") REFERENCES "Player" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Fitting_basedOnFittingId_fkey" FOREIGN KEY ("basedOnFittingId") REFERENCES "Fitting" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Spec" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "fittingId" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Spec_fittingId_fkey" FOREIGN KEY ("fittingId") REFERENCES "Fitting" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SpecRevision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "specId" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "content" JSONB NOT NULL,
    "contentSha256" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "SpecRevision_specId_fkey" FOREIGN KEY ("specId") REFERENCES "Spec" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AppliedRequest" (
    "key" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "resultId" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "Sequence" (
    "name" TEXT NOT NULL PRIMARY KEY,
    "next" INTEGER NOT NULL
);

-- CreateIndex
CREATE INDEX "Player_searchName_idx" ON "Player"("searchName");

-- CreateIndex
CREATE INDEX "Player_updatedAt_idx" ON "Player"("updatedAt");

-- CreateIndex
CREATE UNIQUE INDEX "Fitting_number_key" ON "Fitting"("number");

-- CreateIndex
CREATE INDEX "Fitting_playerId_idx" ON "Fitting"("playerId");

-- CreateIndex
CREATE INDEX "Fitting_basedOnFittingId_idx" ON "Fitting"("basedOnFittingId");

-- CreateIndex
CREATE INDEX "Fitting_updatedAt_idx" ON "Fitting"("updatedAt");

-- CreateIndex
CREATE UNIQUE INDEX "Spec_number_key" ON "Spec"("number");

-- CreateIndex
CREATE UNIQUE INDEX "Spec_fittingId_key" ON "Spec"("fittingId");

-- CreateIndex
CREATE UNIQUE INDEX "SpecRevision_requestKey_key" ON "SpecRevision"("requestKey");

-- CreateIndex
CREATE INDEX "SpecRevision_createdAt_idx" ON "SpecRevision"("createdAt");

-- CreateIndex
CREATE UNIQUE INDEX "SpecRevision_specId_revision_key" ON "SpecRevision"("specId", "revision");

-- CreateIndex
CREATE INDEX "AppliedRequest_createdAt_idx" ON "AppliedRequest"("createdAt");


-- A saved revision never changes. The ORM does not know triggers: a later migration that redefines
-- "SpecRevision" (create, copy, drop, rename) must create them again.
CREATE TRIGGER "SpecRevision_refuse_update" BEFORE UPDATE ON "SpecRevision"
BEGIN
    SELECT RAISE(ABORT, 'a saved spec revision never changes; save a new revision instead');
END;

CREATE TRIGGER "SpecRevision_refuse_delete" BEFORE DELETE ON "SpecRevision"
BEGIN
    SELECT RAISE(ABORT, 'a saved spec revision is kept; it cannot be deleted');
END;
