import "server-only";
import { bySchema } from "@/lib/records/jobs/data";
import { editJob, type JobEdit, type JobSaved } from "@/lib/records/jobs/edit";
import { makeLinkIn, revokeLinksIn } from "@/lib/records/share-links/mutations";

/** The link's token, told this once; null where the same request was carried out before. */
export type LinkMade =
	| { readonly ok: true; readonly token: string | null }
	| Exclude<JobSaved, { readonly ok: true }>;

/** Makes an address under which the customer sees the quote and can agree to it. */
export async function makeJobLink({
	expiresAt,
	...given
}: JobEdit & { expiresAt: Date | null; by: string }): Promise<LinkMade> {
	const by = bySchema.parse(given.by);
	let token: string | null = null;
	const saved = await editJob(
		"make-job-link",
		given,
		async (transaction, job) => {
			token = await makeLinkIn(transaction, { jobId: job.id }, expiresAt);
			return { change: {}, event: { kind: "link-made", by } };
		},
	);
	return saved.ok ? { ok: true, token } : saved;
}

/** Ends every address of the job. */
export async function revokeJobLinks(
	given: JobEdit & { by: string },
): Promise<JobSaved> {
	const by = bySchema.parse(given.by);
	return editJob("revoke-job-links", given, async (transaction, job) => {
		const count = await revokeLinksIn(transaction, { jobId: job.id });
		return count === 0
			? { change: null }
			: { change: {}, event: { kind: "links-revoked", by } };
	});
}
