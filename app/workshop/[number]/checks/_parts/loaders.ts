import "server-only";
import type { BuildToHold } from "@/lib/build/as-built";
import type { Outcome } from "@/lib/numerics/outcome";
import type { CheckRecord } from "@/lib/records/checks/data";
import { whatIsSaid } from "@/lib/records/checks/evidence";
import { checksOf } from "@/lib/records/checks/loaders";
import { benchBuild, type JobRecord } from "@/lib/records/jobs/data";
import type { EvidenceRecord } from "@/lib/records/wood-evidence/data";
import {
	evidenceByWood,
	evidenceOfJob,
} from "@/lib/records/wood-evidence/loaders";
import type { WoodId } from "@/lib/reference/woods";
import { openFindings } from "@/lib/workshop/check";
import type { CheckEvidence } from "@/lib/workshop/check-evidence";
import type { BuildContent } from "@/lib/workshop/job-content";
import { tableDensity, woodBand } from "@/lib/workshop/wood-evidence";

/** What the bench measured of a job, against what it builds by. */
export async function asBuiltOf(job: JobRecord) {
	const build = benchBuild(job);
	const checks = await checksOf(job.id);
	return { build, checks, open: openFindings(build, checks) };
}

/** What a check form has to know of the build: no more than it compares with. */
export const holdOf = ({
	targets,
	stations,
	naturalBalanceFromButtMm: { value },
	design: {
		tip: { heightMm },
	},
}: BuildContent): BuildToHold => ({
	targets,
	stations,
	naturalBalanceFromButtMm: { value },
	design: { tip: { heightMm } },
});

const bandAfter = (
	wood: WoodId,
	readings: Parameters<typeof woodBand>[1] = [],
) => woodBand(tableDensity(wood), readings).next;

/** What the latest telling check says of its woods, and what it does to each wood's band. */
export async function woodsSaidBy(
	job: JobRecord,
	checks: readonly CheckRecord[],
) {
	const from = checks.findIndex(
		({ stage }) => stage === "before-weighting" || stage === "finished",
	);
	const check = checks[from];
	if (check === undefined) return null;
	const said: Outcome<CheckEvidence> = await whatIsSaid(
		job,
		checks.slice(from),
	);
	const rows = await evidenceOfJob(job.id);
	const others = await evidenceByWood(undefined, { notOfJobId: job.id });
	const { densities } = benchBuild(job).design;
	return {
		check,
		said,
		woods: said.ok
			? said.value.said.map((one) => ({
					...one,
					expected: densities[one.wood] ?? tableDensity(one.wood),
					before: bandAfter(one.wood, others[one.wood]),
					after: bandAfter(one.wood, [one, ...(others[one.wood] ?? [])]),
					evidence:
						rows.find(
							(row): row is EvidenceRecord =>
								row.checkId === check.id && row.wood === one.wood,
						) ?? null,
				}))
			: [],
	};
}
