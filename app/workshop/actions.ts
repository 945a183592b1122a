"use server";

import { headers } from "next/headers";
import type { z } from "zod";
import { readReader } from "@/app/_ui/preferences/loaders";
import { originOf } from "@/app/specs/_parts/job-address";
import { contentOf as specContentOf } from "@/app/specs/_parts/loaders";
import {
	benchAgreementSchema,
	changeSchema,
	customerSchema,
	dueSchema,
	type JobChange,
	linkSchema,
	moveSchema,
	noteSchema,
	previewSchema,
	quoteSchema,
	revokeSchema,
	sendSchema,
} from "@/lib/forms/job";
import { accept, type Outcome, type Refusal } from "@/lib/numerics/outcome";
import { type DifferenceRow, differenceRows } from "@/lib/present/job-view";
import { refusalView } from "@/lib/present/notices";
import type { JobRecord } from "@/lib/records/jobs/data";
import type { JobSaved } from "@/lib/records/jobs/edit";
import { makeJobLink, revokeJobLinks } from "@/lib/records/jobs/links";
import { getJob } from "@/lib/records/jobs/loaders";
import {
	addJobNote,
	changeCustomer,
	moveJob,
	openJob,
	setDue,
} from "@/lib/records/jobs/mutations";
import { agree, newRevision, writeQuote } from "@/lib/records/jobs/quotes";
import { currentSettings } from "@/lib/records/settings/loaders";
import { getSpecRevision } from "@/lib/records/specs/loaders";
import {
	type ChangeSettings,
	changedContent,
	withBuild,
} from "@/lib/workshop/job-change";
import { buildFromSpec, type JobContent } from "@/lib/workshop/job-content";
import { jobDifferences } from "@/lib/workshop/job-difference";
import { jobPrice } from "@/lib/workshop/job-price";
import { densitiesOf } from "@/lib/workshop/stock";
import { addDays } from "@/lib/workshop/working-days";

/*
 * An action is a public endpoint: whatever comes in is parsed, whoever the type says sent it. Who may
 * do it is asked in `mayWork`, the first line of each.
 */

export type ActionResult =
	| { readonly ok: true }
	| { readonly ok: false; readonly messages: readonly string[] };

/** There is no sign-in yet: whoever reaches the app works at its bench. */
async function mayWork(): Promise<void> {}

/** Opens a job with a saved spec revision and gives its number. */
export async function sendToWorkshop(
	request: z.input<typeof sendSchema>,
): Promise<{ readonly number: number }> {
	await mayWork();
	const { specNumber, specRevision, extras, ...given } =
		sendSchema.parse(request);
	const spec = await getSpecRevision(specNumber, specRevision);
	if (spec === null)
		throw new Error(`there is no spec ${specNumber}/${specRevision}`);
	const build = buildFromSpec(specContentOf(spec.content));
	const { prices, versions } = await currentSettings();
	const price = jobPrice({ prices, build, extras });
	const job = await openJob({
		...given,
		from: { specRevisionId: spec.id },
		content: {
			schemaVersion: 1,
			build,
			extras,
			price: price.ok ? price.value : null,
			quote: null,
			settingVersions: versions,
		},
	});
	return { number: job.number };
}

export async function move(
	request: z.input<typeof moveSchema>,
): Promise<ActionResult> {
	await mayWork();
	return told(await moveJob(moveSchema.parse(request)));
}

export async function putDue(
	request: z.input<typeof dueSchema>,
): Promise<ActionResult> {
	await mayWork();
	return told(await setDue(dueSchema.parse(request)));
}

export async function addNote(
	request: z.input<typeof noteSchema>,
): Promise<ActionResult> {
	await mayWork();
	return told(await addJobNote(noteSchema.parse(request)));
}

export async function putCustomer(
	request: z.input<typeof customerSchema>,
): Promise<ActionResult> {
	await mayWork();
	return told(await changeCustomer(customerSchema.parse(request)));
}

/** Names a price, in the currency of the workshop's list. */
export async function quote(
	request: z.input<typeof quoteSchema>,
): Promise<ActionResult> {
	await mayWork();
	const { quote: given, ...edit } = quoteSchema.parse(request);
	const { prices } = await currentSettings();
	const { currency, minorPerUnit } = prices;
	return told(
		await writeQuote({ ...edit, quote: { ...given, currency, minorPerUnit } }),
	);
}

export type ChangePreview =
	| {
			readonly ok: true;
			readonly rows: readonly DifferenceRow[];
			/** By the price list, before and after; null where it lacks something. */
			readonly listMinor: {
				readonly before: number | null;
				readonly after: number | null;
			};
	  }
	| { readonly ok: false; readonly messages: readonly string[] };

/** Works a change out without keeping it. */
export async function previewChange(
	request: z.input<typeof previewSchema>,
): Promise<ChangePreview> {
	await mayWork();
	const { number, change } = previewSchema.parse(request);
	const job = await getJob(number);
	if (job === null) return goneResult();
	const before = job.latest.content;
	const content = await contentFor(job, change);
	if (!content.ok) return refused(content.refusals);
	const after = content.value;
	// Amounts of two currencies are not set beside each other.
	const isComparable = before.price?.currency === after.price?.currency;
	return {
		ok: true,
		rows: differenceRows(jobDifferences(before, after), await readReader()),
		listMinor: {
			before: isComparable ? (before.price?.totalMinor ?? null) : null,
			after: isComparable ? (after.price?.totalMinor ?? null) : null,
		},
	};
}

/** Works the change out anew and keeps it as the next revision. */
export async function change(
	request: z.input<typeof changeSchema>,
): Promise<ActionResult> {
	await mayWork();
	const { change: asked, priceMinor, ...edit } = changeSchema.parse(request);
	const job = await getJob(edit.number);
	if (job === null) return goneResult();
	const content = await contentFor(job, asked);
	if (!content.ok) return refused(content.refusals);
	const { quote: before } = content.value;
	return told(
		await newRevision({
			...edit,
			content:
				before === null || priceMinor === null
					? content.value
					: { ...content.value, quote: { ...before, priceMinor } },
		}),
	);
}

async function contentFor(
	job: JobRecord,
	asked: JobChange,
): Promise<Outcome<JobContent>> {
	const latest = job.latest.content;
	if (asked.from === "earlier") {
		const earlier = job.revisions.find(
			({ revision }) => revision === asked.jobRevision,
		);
		if (earlier === undefined)
			throw new Error(`job ${job.number} has no revision ${asked.jobRevision}`);
		return accept(earlier.content);
	}
	const { prices, stock, evidence, versions } = await currentSettings();
	const settings: ChangeSettings = {
		prices,
		densities: densitiesOf(stock, evidence),
		versions,
	};
	const { extras } = asked;
	if (asked.from === "edit")
		return changedContent({ latest, cue: asked.cue, extras, settings });
	if (job.spec === null) throw new Error(`job ${job.number} is from no spec`);
	const spec = await getSpecRevision(job.spec.number, asked.specRevision);
	if (spec === null)
		throw new Error(
			`there is no spec ${job.spec.number}/${asked.specRevision}`,
		);
	const build = buildFromSpec(specContentOf(spec.content));
	return accept(withBuild({ latest, extras, settings }, build));
}

export type LinkResult =
	| {
			readonly ok: true;
			/** Told this once; null where the same link was made before. */
			readonly address: string | null;
	  }
	| { readonly ok: false; readonly messages: readonly string[] };

/** Makes an address under which the customer sees the quote. */
export async function makeLink(
	request: z.input<typeof linkSchema>,
): Promise<LinkResult> {
	await mayWork();
	const { lastDay, ...edit } = linkSchema.parse(request);
	const made = await makeJobLink({
		...edit,
		expiresAt:
			lastDay === null ? null : new Date(`${addDays(lastDay, 1)}T00:00:00`),
	});
	if (!made.ok) {
		const result = await told(made);
		return result.ok ? { ok: true, address: null } : result;
	}
	const { header } = await currentSettings();
	const origin = header.publicAddress || originOf(await headers()) || "";
	return {
		ok: true,
		address: made.token === null ? null : `${origin}/agree/${made.token}`,
	};
}

export async function revokeLinks(
	request: z.input<typeof revokeSchema>,
): Promise<ActionResult> {
	await mayWork();
	return told(await revokeJobLinks(revokeSchema.parse(request)));
}

/** Writes down that the customer agreed by word of mouth. */
export async function writeAgreement(
	request: z.input<typeof benchAgreementSchema>,
): Promise<ActionResult> {
	await mayWork();
	const agreed = await agree({
		...benchAgreementSchema.parse(request),
		via: "bench",
	});
	return agreed.ok ? { ok: true } : refused(agreed.refusals);
}

async function told(saved: JobSaved | { ok: true }): Promise<ActionResult> {
	if (saved.ok) return { ok: true };
	if ("refusals" in saved) return refused(saved.refusals);
	if (saved.conflict === null) return goneResult();
	const { say } = await readReader();
	return { ok: false, messages: [say("job.conflict")] };
}

async function refused(
	refusals: readonly Refusal[],
): Promise<{ ok: false; messages: readonly string[] }> {
	const reader = await readReader();
	return {
		ok: false,
		messages: refusals.map((refusal) => refusalView(refusal, reader).text),
	};
}

async function goneResult(): Promise<{
	ok: false;
	messages: readonly string[];
}> {
	const { say } = await readReader();
	return { ok: false, messages: [say("job.gone")] };
}
