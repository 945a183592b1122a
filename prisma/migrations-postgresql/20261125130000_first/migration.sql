-- CreateTable
CREATE TABLE "Player" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "searchName" TEXT NOT NULL,
    "birthDate" TEXT,
    "sex" TEXT,
    "hand" TEXT,
    "notes" TEXT NOT NULL DEFAULT '',
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,
    "remeasureOn" TEXT,
    "erasedAt" TIMESTAMP(3),

    CONSTRAINT "Player_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Fitting" (
    "id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "playerId" TEXT NOT NULL,
    "answers" JSONB NOT NULL,
    "basedOnFittingId" TEXT,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,
    "finishedAt" TIMESTAMP(3),

    CONSTRAINT "Fitting_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Spec" (
    "id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "fittingId" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Spec_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SpecRevision" (
    "id" TEXT NOT NULL,
    "specId" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "content" JSONB NOT NULL,
    "contentSha256" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "SpecRevision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "AppliedRequest" (
    "key" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "resultId" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "AppliedRequest_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "Sequence" (
    "name" TEXT NOT NULL,
    "next" INTEGER NOT NULL,

    CONSTRAINT "Sequence_pkey" PRIMARY KEY ("name")
);

-- CreateTable
CREATE TABLE "TrialCue" (
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "lengthMm" DOUBLE PRECISION NOT NULL,
    "massG" DOUBLE PRECISION NOT NULL,
    "buttDiameterMm" DOUBLE PRECISION NOT NULL,
    "tipDiameterMm" DOUBLE PRECISION NOT NULL,
    "balanceFromButtMm" DOUBLE PRECISION NOT NULL,
    "notes" TEXT NOT NULL DEFAULT '',
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "retiredAt" TIMESTAMP(3),
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "TrialCue_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Trial" (
    "id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "playerId" TEXT NOT NULL,
    "plan" JSONB NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,
    "endedAt" TIMESTAMP(3),

    CONSTRAINT "Trial_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TrialShot" (
    "id" TEXT NOT NULL,
    "trialId" TEXT NOT NULL,
    "shotNumber" INTEGER NOT NULL,
    "letter" TEXT NOT NULL,
    "isPotted" BOOLEAN NOT NULL,
    "line" TEXT,
    "position" TEXT,
    "place" TEXT,
    "requestKey" TEXT NOT NULL,
    "undoneAt" TIMESTAMP(3),
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "TrialShot_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TrialWish" (
    "id" TEXT NOT NULL,
    "trialId" TEXT NOT NULL,
    "fittingId" TEXT NOT NULL,
    "field" TEXT NOT NULL,
    "before" TEXT,
    "after" TEXT NOT NULL,
    "offer" JSONB NOT NULL,
    "requestKey" TEXT NOT NULL,
    "appliedAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "revertedAt" TIMESTAMP(3),

    CONSTRAINT "TrialWish_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PlayerNote" (
    "id" TEXT NOT NULL,
    "playerId" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "writtenOn" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawnAt" TIMESTAMP(3),

    CONSTRAINT "PlayerNote_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "PlayerCue" (
    "id" TEXT NOT NULL,
    "playerId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "jobId" TEXT,
    "since" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "asideAt" TIMESTAMP(3),

    CONSTRAINT "PlayerCue_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "OnlineCue" (
    "id" TEXT NOT NULL,
    "choices" JSONB NOT NULL,
    "requestKey" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "OnlineCue_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "ShareLink" (
    "id" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "onlineCueId" TEXT,
    "jobId" TEXT,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expiresAt" TIMESTAMP(3),
    "revokedAt" TIMESTAMP(3),

    CONSTRAINT "ShareLink_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Job" (
    "id" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "stateSince" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "playerId" TEXT,
    "onlineCueId" TEXT,
    "specRevisionId" TEXT,
    "customerName" TEXT NOT NULL,
    "customerContact" TEXT NOT NULL DEFAULT '',
    "consentAt" TIMESTAMP(3),
    "searchText" TEXT NOT NULL,
    "dueOn" TEXT,
    "notes" TEXT NOT NULL DEFAULT '',
    "requestKey" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Job_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "JobRevision" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "content" JSONB NOT NULL,
    "contentSha256" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "JobRevision_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Agreement" (
    "id" TEXT NOT NULL,
    "jobRevisionId" TEXT NOT NULL,
    "contentSha256" TEXT NOT NULL,
    "agreedName" TEXT NOT NULL,
    "via" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "agreedAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "Agreement_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "JobEvent" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "fromState" TEXT,
    "toState" TEXT,
    "by" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "facts" JSONB,
    "requestKey" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "JobEvent_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "JobCheck" (
    "id" TEXT NOT NULL,
    "jobId" TEXT NOT NULL,
    "stage" TEXT NOT NULL,
    "readings" JSONB NOT NULL,
    "by" TEXT NOT NULL,
    "requestKey" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "JobCheck_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "WoodEvidence" (
    "id" TEXT NOT NULL,
    "wood" TEXT NOT NULL,
    "jobId" TEXT,
    "checkId" TEXT,
    "densityKgM3" DOUBLE PRECISION NOT NULL,
    "sdKgM3" DOUBLE PRECISION NOT NULL,
    "by" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "requestKey" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawnAt" TIMESTAMP(3),
    "withdrawnBy" TEXT,

    CONSTRAINT "WoodEvidence_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "SettingVersion" (
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "content" JSONB NOT NULL,
    "validFrom" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "by" TEXT NOT NULL,
    "isDemo" BOOLEAN NOT NULL DEFAULT false,
    "requestKey" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "SettingVersion_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "RateCount" (
    "key" TEXT NOT NULL,
    "windowStart" TIMESTAMP(3) NOT NULL,
    "count" INTEGER NOT NULL,

    CONSTRAINT "RateCount_pkey" PRIMARY KEY ("key","windowStart")
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

-- AddForeignKey
ALTER TABLE "Fitting" ADD CONSTRAINT "Fitting_playerId_fkey" FOREIGN KEY ("playerId") REFERENCES "Player"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Fitting" ADD CONSTRAINT "Fitting_basedOnFittingId_fkey" FOREIGN KEY ("basedOnFittingId") REFERENCES "Fitting"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Spec" ADD CONSTRAINT "Spec_fittingId_fkey" FOREIGN KEY ("fittingId") REFERENCES "Fitting"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SpecRevision" ADD CONSTRAINT "SpecRevision_specId_fkey" FOREIGN KEY ("specId") REFERENCES "Spec"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Trial" ADD CONSTRAINT "Trial_playerId_fkey" FOREIGN KEY ("playerId") REFERENCES "Player"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TrialShot" ADD CONSTRAINT "TrialShot_trialId_fkey" FOREIGN KEY ("trialId") REFERENCES "Trial"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TrialWish" ADD CONSTRAINT "TrialWish_trialId_fkey" FOREIGN KEY ("trialId") REFERENCES "Trial"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "TrialWish" ADD CONSTRAINT "TrialWish_fittingId_fkey" FOREIGN KEY ("fittingId") REFERENCES "Fitting"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PlayerNote" ADD CONSTRAINT "PlayerNote_playerId_fkey" FOREIGN KEY ("playerId") REFERENCES "Player"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PlayerCue" ADD CONSTRAINT "PlayerCue_playerId_fkey" FOREIGN KEY ("playerId") REFERENCES "Player"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "PlayerCue" ADD CONSTRAINT "PlayerCue_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ShareLink" ADD CONSTRAINT "ShareLink_onlineCueId_fkey" FOREIGN KEY ("onlineCueId") REFERENCES "OnlineCue"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ShareLink" ADD CONSTRAINT "ShareLink_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Job" ADD CONSTRAINT "Job_playerId_fkey" FOREIGN KEY ("playerId") REFERENCES "Player"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Job" ADD CONSTRAINT "Job_onlineCueId_fkey" FOREIGN KEY ("onlineCueId") REFERENCES "OnlineCue"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Job" ADD CONSTRAINT "Job_specRevisionId_fkey" FOREIGN KEY ("specRevisionId") REFERENCES "SpecRevision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobRevision" ADD CONSTRAINT "JobRevision_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Agreement" ADD CONSTRAINT "Agreement_jobRevisionId_fkey" FOREIGN KEY ("jobRevisionId") REFERENCES "JobRevision"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobEvent" ADD CONSTRAINT "JobEvent_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobCheck" ADD CONSTRAINT "JobCheck_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "WoodEvidence" ADD CONSTRAINT "WoodEvidence_jobId_fkey" FOREIGN KEY ("jobId") REFERENCES "Job"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "WoodEvidence" ADD CONSTRAINT "WoodEvidence_checkId_fkey" FOREIGN KEY ("checkId") REFERENCES "JobCheck"("id") ON DELETE RESTRICT ON UPDATE CASCADE;



-- What was written down stays: these refuse, with the words given.
CREATE FUNCTION "refuse"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION '%', TG_ARGV[0];
END;
$$;

CREATE TRIGGER "SpecRevision_refuse_update" BEFORE UPDATE ON "SpecRevision"
FOR EACH ROW EXECUTE FUNCTION "refuse"('a saved spec revision never changes; save a new revision instead');
CREATE TRIGGER "JobRevision_refuse_update" BEFORE UPDATE ON "JobRevision"
FOR EACH ROW EXECUTE FUNCTION "refuse"('a job revision never changes; write a new revision instead');
CREATE TRIGGER "JobEvent_refuse_update" BEFORE UPDATE ON "JobEvent"
FOR EACH ROW EXECUTE FUNCTION "refuse"('what happened to a job never changes');
CREATE TRIGGER "JobCheck_refuse_update" BEFORE UPDATE ON "JobCheck"
FOR EACH ROW EXECUTE FUNCTION "refuse"('a check never changes; write a new check instead');
CREATE TRIGGER "SettingVersion_refuse_update" BEFORE UPDATE ON "SettingVersion"
FOR EACH ROW EXECUTE FUNCTION "refuse"('a version of a setting never changes; write a new version instead');

-- The one change an agreement takes: the name is blanked when the person is erased.
CREATE TRIGGER "Agreement_refuse_update" BEFORE UPDATE ON "Agreement"
FOR EACH ROW WHEN (NOT (
    NEW."agreedName" = '' AND NEW."id" = OLD."id" AND NEW."jobRevisionId" = OLD."jobRevisionId"
    AND NEW."contentSha256" = OLD."contentSha256" AND NEW."via" = OLD."via"
    AND NEW."requestKey" = OLD."requestKey" AND NEW."agreedAt" = OLD."agreedAt"
)) EXECUTE FUNCTION "refuse"('an agreement never changes');

CREATE TRIGGER "SettingVersion_refuse_delete" BEFORE DELETE ON "SettingVersion"
FOR EACH ROW WHEN (NOT OLD."isDemo")
EXECUTE FUNCTION "refuse"('a version of a setting is kept; it cannot be deleted');

-- Only what hangs on an invented demo job can be deleted.
CREATE FUNCTION "refuse_unless_demo_job"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF EXISTS (SELECT 1 FROM "Job" WHERE "id" = OLD."jobId" AND "isDemo") THEN
        RETURN OLD;
    END IF;
    RAISE EXCEPTION '%', TG_ARGV[0];
END;
$$;
CREATE TRIGGER "JobRevision_refuse_delete" BEFORE DELETE ON "JobRevision"
FOR EACH ROW EXECUTE FUNCTION "refuse_unless_demo_job"('a job revision is kept; it cannot be deleted');
CREATE TRIGGER "JobEvent_refuse_delete" BEFORE DELETE ON "JobEvent"
FOR EACH ROW EXECUTE FUNCTION "refuse_unless_demo_job"('what happened to a job is kept; it cannot be deleted');
CREATE TRIGGER "JobCheck_refuse_delete" BEFORE DELETE ON "JobCheck"
FOR EACH ROW EXECUTE FUNCTION "refuse_unless_demo_job"('a check is kept; it cannot be deleted');

CREATE FUNCTION "refuse_unless_demo_agreement"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF EXISTS (
        SELECT 1 FROM "JobRevision"
        JOIN "Job" ON "Job"."id" = "JobRevision"."jobId"
        WHERE "JobRevision"."id" = OLD."jobRevisionId" AND "Job"."isDemo"
    ) THEN
        RETURN OLD;
    END IF;
    RAISE EXCEPTION 'an agreement is kept; it cannot be deleted';
END;
$$;
CREATE TRIGGER "Agreement_refuse_delete" BEFORE DELETE ON "Agreement"
FOR EACH ROW EXECUTE FUNCTION "refuse_unless_demo_agreement"();

-- A saved spec revision is kept, unless its fitting is an invented one or its player was erased.
CREATE FUNCTION "refuse_unless_demo_or_erased"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF EXISTS (
        SELECT 1 FROM "Spec"
        JOIN "Fitting" ON "Fitting"."id" = "Spec"."fittingId"
        JOIN "Player" ON "Player"."id" = "Fitting"."playerId"
        WHERE "Spec"."id" = OLD."specId" AND ("Fitting"."isDemo" OR "Player"."erasedAt" IS NOT NULL)
    ) THEN
        RETURN OLD;
    END IF;
    RAISE EXCEPTION 'a saved spec revision is kept; it cannot be deleted';
END;
$$;
CREATE TRIGGER "SpecRevision_refuse_delete" BEFORE DELETE ON "SpecRevision"
FOR EACH ROW EXECUTE FUNCTION "refuse_unless_demo_or_erased"();
