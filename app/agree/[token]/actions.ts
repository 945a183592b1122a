"use server";

import type { z } from "zod";
import { readReader } from "@/app/_ui/preferences/loaders";
import { customerAgreementSchema } from "@/lib/forms/job";
import { refusalView } from "@/lib/present/notices";
import { getJobById } from "@/lib/records/jobs/loaders";
import { agree } from "@/lib/records/jobs/quotes";
import { openLink } from "@/lib/records/share-links/loaders";

export type AgreeResult =
	| { readonly ok: true }
	| { readonly ok: false; readonly messages: readonly string[] };

/**
 * The customer's yes. Whoever has the address may give it, and nobody else: the job is found by the
 * token alone.
 */
export async function agreeToQuote(
	request: z.input<typeof customerAgreementSchema>,
): Promise<AgreeResult> {
	const { token, ...given } = customerAgreementSchema.parse(request);
	const reader = await readReader();
	const opened = await openLink(token);
	if (opened.standing !== "open" || opened.link.jobId === null)
		return { ok: false, messages: [reader.say("agreement.linkAbout")] };
	const job = await getJobById(opened.link.jobId);
	if (job === null) throw new Error("a link leads to no job");
	const agreed = await agree({ ...given, number: job.number, via: "page" });
	return agreed.ok
		? { ok: true }
		: {
				ok: false,
				messages: agreed.refusals.map(
					(refusal) => refusalView(refusal, reader).text,
				),
			};
}
