-- AlterTable
ALTER TABLE "Player" ADD COLUMN "erasedAt" DATETIME;
ALTER TABLE "Player" ADD COLUMN "remeasureOn" TEXT;

-- CreateTable
CREATE TABLE "PlayerNote" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "playerId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "writtenOn" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawnAt" DATETIME,
    CONSTRAINT "PlayerNote_playerId_fkey" FOREIGN KEY ("playerId") REFERENCES "Player" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PlayerCue" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "playerId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "jobId" TEXT,
    "since" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "asideAt" DATETIME,
    CONSTRAINT "PlayerCue_playerId_fkey" FOREIGN KEY ("playerId") REFERENCES "Player" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "PlayerCue_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "OnlineCue" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "choices" JSONB NOT NULL,
    "requestKey" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "ShareLink" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "tokenHash" TEXT NOT NULL,
    "onlineCueId" TEXT,
    "jobId" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expiresAt" DATETIME,
    "revokedAt" DATETIME,
    CONSTRAINT "ShareLink_onlineCueId_fkey" FOREIGN KEY ("onlineCueId") REFERENCES "OnlineCue" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ShareLink_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Job" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "stateSince" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "playerId" TEXT,
    "onlineCueId" TEXT,
    "specRevisionId" TEXT,
    "customerName" TEXT NOT NULL,
    "customerContact" TEXT NOT NULL DEFAULT '',
    "consentAt" DATETIME,
    "searchText" TEXT NOT NULL,
    "dueOn" TEXT,
    "notes" TEXT NOT NULL DEFAULT '',
    "requestKey" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "Job_playerId_fkey" FOREIGN KEY ("playerId") REFERENCES "Player" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Job_onlineCueId_fkey" FOREIGN KEY ("onlineCueId") REFERENCES "OnlineCue" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Job_specRevisionId_fkey" FOREIGN KEY ("specRevisionId") REFERENCES "SpecRevision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "JobRevision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "content" JSONB NOT NULL,
    "contentSha256" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "JobRevision_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Agreement" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobRevisionId" TEXT NOT NULL,
    "contentSha256" TEXT NOT NULL,
    "agreedName" TEXT NOT NULL,
    "via" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "agreedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Agreement_jobRevisionId_fkey" FOREIGN KEY ("jobRevisionId") REFERENCES "JobRevision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "JobEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "fromState" TEXT,
    "toState" TEXT,
    "by" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "facts" JSONB,
    "requestKey" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "JobEvent_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "JobCheck" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "jobId" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "readings" JSONB NOT NULL,
    "by" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "JobCheck_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "WoodEvidence" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "wood" TEXT NOT NULL,
    "jobId" TEXT,
    "checkId" TEXT,
    "densityKgM3" REAL NOT NULL,
    "sdKgM3" REAL NOT NULL,
    "by" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "requestKey" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawnAt" DATETIME,
    "withdrawnBy" TEXT,
    CONSTRAINT "WoodEvidence_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "WoodEvidence_checkId_fkey" FOREIGN KEY ("checkId") REFERENCES "JobCheck" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SettingVersion" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "content" JSONB NOT NULL,
    "validFrom" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "by" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "requestKey" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);

-- CreateTable
CREATE TABLE "RateCount" (
    "key" TEXT NOT NULL,
    "windowStart" DATETIME NOT NULL,
    "count" INTEGER NOT NULL,

    PRIMARY KEY ("key", "windowStart")
);

-- CreateIndex
CREATE UNIQUE INDEX "PlayerNote_requestKey_key" ON "PlayerNote"("requestKey");

-- CreateIndex
CREATE INDEX "PlayerNote_playerId_writtenOn_idx" ON "PlayerNote"("playerId", "writtenOn");

-- CreateIndex
CREATE UNIQUE INDEX "PlayerCue_jobId_key" ON "PlayerCue"("jobId");

-- CreateIndex
CREATE INDEX "PlayerCue_playerId_createdAt_idx" ON "PlayerCue"("playerId", "createdAt");

-- CreateIndex
CREATE UNIQUE INDEX "OnlineCue_requestKey_key" ON "OnlineCue"("requestKey");

-- CreateIndex
CREATE INDEX "OnlineCue_updatedAt_idx" ON "OnlineCue"("updatedAt");

-- CreateIndex
CREATE UNIQUE INDEX "ShareLink_tokenHash_key" ON "ShareLink"("tokenHash");

-- CreateIndex
CREATE INDEX "ShareLink_onlineCueId_idx" ON "ShareLink"("onlineCueId");

-- CreateIndex
CREATE INDEX "ShareLink_jobId_idx" ON "ShareLink"("jobId");

-- CreateIndex
CREATE UNIQUE INDEX "Job_number_key" ON "Job"("number");

-- CreateIndex
CREATE UNIQUE INDEX "Job_requestKey_key" ON "Job"("requestKey");

-- CreateIndex
CREATE INDEX "Job_state_dueOn_idx" ON "Job"("state", "dueOn");

-- CreateIndex
CREATE INDEX "Job_dueOn_idx" ON "Job"("dueOn");

-- CreateIndex
CREATE INDEX "Job_playerId_idx" ON "Job"("playerId");

-- CreateIndex
CREATE INDEX "Job_onlineCueId_idx" ON "Job"("onlineCueId");

-- CreateIndex
CREATE INDEX "Job_specRevisionId_idx" ON "Job"("specRevisionId");

-- CreateIndex
CREATE INDEX "Job_updatedAt_idx" ON "Job"("updatedAt");

-- CreateIndex
CREATE UNIQUE INDEX "JobRevision_requestKey_key" ON "JobRevision"("requestKey");

-- CreateIndex
CREATE UNIQUE INDEX "JobRevision_jobId_revision_key" ON "JobRevision"("jobId", "revision");

-- CreateIndex
CREATE UNIQUE INDEX "Agreement_jobRevisionId_key" ON "Agreement"("jobRevisionId");

-- CreateIndex
CREATE UNIQUE INDEX "Agreement_requestKey_key" ON "Agreement"("requestKey");

-- CreateIndex
CREATE UNIQUE INDEX "JobEvent_requestKey_key" ON "JobEvent"("requestKey");

-- CreateIndex
CREATE INDEX "JobEvent_jobId_createdAt_idx" ON "JobEvent"("jobId", "createdAt");

-- CreateIndex
CREATE UNIQUE INDEX "JobCheck_requestKey_key" ON "JobCheck"("requestKey");

-- CreateIndex
CREATE INDEX "JobCheck_jobId_createdAt_idx" ON "JobCheck"("jobId", "createdAt");

-- CreateIndex
CREATE UNIQUE INDEX "WoodEvidence_requestKey_key" ON "WoodEvidence"("requestKey");

-- CreateIndex
CREATE INDEX "WoodEvidence_wood_createdAt_idx" ON "WoodEvidence"("wood", "createdAt");

-- CreateIndex
CREATE INDEX "WoodEvidence_jobId_idx" ON "WoodEvidence"("jobId");

-- CreateIndex
CREATE INDEX "WoodEvidence_checkId_idx" ON "WoodEvidence"("checkId");

-- CreateIndex
CREATE UNIQUE INDEX "SettingVersion_requestKey_key" ON "SettingVersion"("requestKey");

-- CreateIndex
CREATE INDEX "SettingVersion_kind_validFrom_idx" ON "SettingVersion"("kind", "validFrom");

-- CreateIndex
CREATE UNIQUE INDEX "SettingVersion_kind_version_key" ON "SettingVersion"("kind", "version");

-- CreateIndex
CREATE INDEX "RateCount_windowStart_idx" ON "RateCount"("windowStart");

-- What was written down stays. The ORM does not know triggers: a later migration that redefines one
-- of these tables (create, copy, drop, rename) must create them again.
CREATE TRIGGER "JobRevision_refuse_update" BEFORE UPDATE ON "JobRevision"
BEGIN
    SELECT RAISE(ABORT, 'a job revision never changes; write a new revision instead');
END;
-- The one change an agreement takes: the name is blanked when the person is erased.
CREATE TRIGGER "Agreement_refuse_update" BEFORE UPDATE ON "Agreement"
WHEN NOT (
    NEW."agreedName" = '' AND NEW."id" = OLD."id" AND NEW."jobRevisionId" = OLD."jobRevisionId"
    AND NEW."contentSha256" = OLD."contentSha256" AND NEW."via" = OLD."via"
    AND NEW."requestKey" = OLD."requestKey" AND NEW."agreedAt" = OLD."agreedAt"
)
BEGIN
    SELECT RAISE(ABORT, 'an agreement never changes');
END;
CREATE TRIGGER "JobEvent_refuse_update" BEFORE UPDATE ON "JobEvent"
BEGIN
    SELECT RAISE(ABORT, 'what happened to a job never changes');
END;
CREATE TRIGGER "JobCheck_refuse_update" BEFORE UPDATE ON "JobCheck"
BEGIN
    SELECT RAISE(ABORT, 'a check never changes; write a new check instead');
END;
CREATE TRIGGER "SettingVersion_refuse_update" BEFORE UPDATE ON "SettingVersion"
BEGIN
    SELECT RAISE(ABORT, 'a version of a setting never changes; write a new version instead');
END;

-- Only invented demo jobs can be deleted.
CREATE TRIGGER "JobRevision_refuse_delete" BEFORE DELETE ON "JobRevision"
WHEN NOT EXISTS (SELECT 1 FROM "Job" WHERE "id" = OLD."jobId" AND "isDemo" = 1)
BEGIN
    SELECT RAISE(ABORT, 'a job revision is kept; it cannot be deleted');
END;
CREATE TRIGGER "JobEvent_refuse_delete" BEFORE DELETE ON "JobEvent"
WHEN NOT EXISTS (SELECT 1 FROM "Job" WHERE "id" = OLD."jobId" AND "isDemo" = 1)
BEGIN
    SELECT RAISE(ABORT, 'what happened to a job is kept; it cannot be deleted');
END;
CREATE TRIGGER "JobCheck_refuse_delete" BEFORE DELETE ON "JobCheck"
WHEN NOT EXISTS (SELECT 1 FROM "Job" WHERE "id" = OLD."jobId" AND "isDemo" = 1)
BEGIN
    SELECT RAISE(ABORT, 'a check is kept; it cannot be deleted');
END;
CREATE TRIGGER "Agreement_refuse_delete" BEFORE DELETE ON "Agreement"
WHEN NOT EXISTS (SELECT 1 FROM "Job" WHERE "id" = (SELECT "jobId" FROM "JobRevision" WHERE "id" = OLD."jobRevisionId") AND "isDemo" = 1)
BEGIN
    SELECT RAISE(ABORT, 'an agreement is kept; it cannot be deleted');
END;
CREATE TRIGGER "SettingVersion_refuse_delete" BEFORE DELETE ON "SettingVersion"
WHEN OLD."isDemo" <> 1
BEGIN
    SELECT RAISE(ABORT, 'a version of a setting is kept; it cannot be deleted');
END;

-- A saved spec revision is kept, unless its fitting is an invented one or its player was erased.
DROP TRIGGER "SpecRevision_refuse_delete";
CREATE TRIGGER "SpecRevision_refuse_delete" BEFORE DELETE ON "SpecRevision"
WHEN NOT EXISTS (
    SELECT 1 FROM "Spec"
    JOIN "Fitting" ON "Fitting"."id" = "Spec"."fittingId"
    JOIN "Player" ON "Player"."id" = "Fitting"."playerId"
    WHERE "Spec"."id" = OLD."specId" AND ("Fitting"."isDemo" = 1 OR "Player"."erasedAt" IS NOT NULL)
)
BEGIN
    SELECT RAISE(ABORT, 'a saved spec revision is kept; it cannot be deleted');
END;
