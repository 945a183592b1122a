"use server";

import { randomUUID } from "node:crypto";
import { cookies, headers } from "next/headers";
import { z } from "zod";
import { readReader } from "@/app/_ui/preferences/loaders";
import { placeOf } from "@/lib/access/address";
import { checkChallenge, issueChallenge } from "@/lib/access/challenge";
import type { WorkDone } from "@/lib/access/work";
import { type OnlineAnswers, readOnline } from "@/lib/forms/online-cue";
import { onlineAnswersSchema } from "@/lib/forms/online-cue-schema";
import { linkExpiry } from "@/lib/records/online-cues/data";
import {
	changeOnlineCue,
	keepOnlineCue,
	renewLink,
	sendOnlineCue,
} from "@/lib/records/online-cues/mutations";
import type { RatedAction } from "@/lib/records/rates/data";
import { takeTurn } from "@/lib/records/rates/mutations";
import { secretNamed } from "@/lib/records/secrets/mutations";
import { currentSettings } from "@/lib/records/settings/loaders";
import { isToken, newToken } from "@/lib/records/share-links/data";
import { MESSAGES } from "@/lib/words/every-language";
import type { LanguageId } from "@/lib/words/languages";
import { readerOf } from "@/lib/words/reader";
import {
	buildFromRequest,
	type JobContent,
	withBillets,
} from "@/lib/workshop/job-content";
import { jobPrice } from "@/lib/workshop/job-price";
import { assess } from "@/lib/workshop/online";
import { DEVICE_COOKIE, workBits } from "./_parts/device";
import { currentOffer } from "./_parts/loaders";

/** An action is a public endpoint: whatever comes in is parsed, whoever the type says sent it. */
const workSchema = z.strictObject({
	token: z.string().max(1000),
	counter: z.number().int().min(0),
});
const keepSchema = z.strictObject({
	requestKey: z.uuid(),
	answers: onlineAnswersSchema,
	work: workSchema,
});
const changeSchema = z.strictObject({
	id: z.string().min(1).max(64),
	revision: z.number().int().min(1),
	answers: onlineAnswersSchema,
});
const renewSchema = z.strictObject({ id: z.string().min(1).max(64) });
const sendSchema = z.strictObject({
	requestKey: z.uuid(),
	cueId: z.string().min(1).max(64).nullable(),
	answers: onlineAnswersSchema,
	work: workSchema,
	name: z.string().trim().min(1).max(200),
	contact: z.string().trim().min(3).max(400),
	message: z.string().trim().max(1500),
	isMinor: z.boolean(),
	isConsented: z.literal(true),
	/** A field no person sees. */
	website: z.string().max(400),
	seen: z.strictObject({
		massG: z.number(),
		totalMinor: z.number().int(),
	}),
});

/** The name of the secret that challenges are signed with. */
const CHALLENGE_SECRET = "online-challenge";

/** Something to work on before a cue can be kept or sent. */
export async function newChallenge(): Promise<{
	token: string;
	workBits: number;
	expiresAtMs: number;
}> {
	return issueChallenge({
		secret: await secretNamed(CHALLENGE_SECRET),
		id: randomUUID(),
		workBits: workBits(),
		nowMs: Date.now(),
	});
}

/** Why something was not done; what was typed stays as it is. */
export type Held =
	| { readonly code: "too-soon"; readonly waitMs: number }
	/** ISO moment. */
	| { readonly code: "too-many"; readonly tryAgainAt: string }
	/** The work was not done, done for something else, or ran out: it is done anew. */
	| { readonly code: "no-work" };

type Admitted =
	| {
			readonly ok: true;
			readonly challenge: { id: string; expiresAtMs: number };
	  }
	| { readonly ok: false; readonly held: Held };

async function admit(action: RatedAction, done: WorkDone): Promise<Admitted> {
	const checked = checkChallenge({
		secret: await secretNamed(CHALLENGE_SECRET),
		nowMs: Date.now(),
		done,
	});
	if (!checked.ok) {
		const { refusal } = checked;
		return {
			ok: false,
			held:
				refusal.code === "too-soon"
					? { code: "too-soon", waitMs: refusal.waitMs }
					: { code: "no-work" },
		};
	}
	const turn = await countTurn(action);
	return turn.ok ? { ok: true, challenge: checked.terms } : turn;
}

async function countTurn(
	action: RatedAction,
): Promise<{ ok: true } | { ok: false; held: Held }> {
	const place = placeOf((await headers()).get("x-forwarded-for"));
	const turn = await takeTurn({ action, place });
	return turn.ok
		? turn
		: {
				ok: false,
				held: {
					code: "too-many",
					tryAgainAt: turn.tryAgainAt.toISOString(),
				},
			};
}

const YEAR_S = 365 * 24 * 60 * 60;

/** The token by which this device may change what it keeps; drawn with the first. */
async function deviceToken(): Promise<string> {
	const jar = await cookies();
	const known = jar.get(DEVICE_COOKIE)?.value;
	if (known !== undefined && isToken(known)) return known;
	const token = newToken();
	jar.set(DEVICE_COOKIE, token, {
		maxAge: YEAR_S,
		path: "/build",
		sameSite: "lax",
		httpOnly: true,
		secure: (await headers()).get("x-forwarded-proto") === "https",
	});
	return token;
}

async function knownDevice(): Promise<string | null> {
	return (await cookies()).get(DEVICE_COOKIE)?.value ?? null;
}

export interface KeptCue {
	readonly id: string;
	readonly token: string;
	readonly revision: number;
	/** ISO moment until which the address opens. */
	readonly expiresAt: string;
}

export type KeepResult =
	| { readonly ok: true; readonly kept: KeptCue }
	| { readonly ok: false; readonly held: Held };

/** Keeps a cue under an address of its own. */
export async function keepCue(
	request: z.input<typeof keepSchema>,
): Promise<KeepResult> {
	const { work, ...given } = keepSchema.parse(request);
	const admitted = await admit("keep-online-cue", work);
	if (!admitted.ok) return admitted;
	const now = new Date();
	const kept = await keepOnlineCue(
		{
			...given,
			deviceToken: await deviceToken(),
			challenge: admitted.challenge,
		},
		now,
	);
	if (!kept.ok) return { ok: false, held: { code: "no-work" } };
	const { cue, token } = kept;
	return {
		ok: true,
		kept: {
			id: cue.id,
			token,
			revision: cue.revision,
			expiresAt: linkExpiry(now).toISOString(),
		},
	};
}

export type ChangeResult =
	| { readonly ok: true; readonly revision: number }
	| {
			readonly ok: false;
			/** What was kept elsewhere meanwhile; null where the cue is not this device's any more. */
			readonly conflict: {
				readonly answers: OnlineAnswers;
				readonly revision: number;
			} | null;
	  }
	| { readonly ok: false; readonly held: Held };

/** Keeps what was changed of this device's cue. */
export async function changeCue(
	request: z.input<typeof changeSchema>,
): Promise<ChangeResult> {
	const given = changeSchema.parse(request);
	const turn = await countTurn("change-online-cue");
	if (!turn.ok) return turn;
	const changed = await changeOnlineCue({
		...given,
		deviceToken: await knownDevice(),
	});
	if (changed.ok) return changed;
	const { conflict } = changed;
	return {
		ok: false,
		conflict: conflict && {
			answers: conflict.answers,
			revision: conflict.revision,
		},
	};
}

/** Ends the addresses of this device's cue and gives another; null where it is not this device's. */
export async function renewAddress(
	request: z.input<typeof renewSchema>,
): Promise<{ token: string; expiresAt: string } | null> {
	const { id } = renewSchema.parse(request);
	const now = new Date();
	const token = await renewLink({ id, deviceToken: await knownDevice() }, now);
	return token === null
		? null
		: { token, expiresAt: linkExpiry(now).toISOString() };
}

/** The customer's own words, and for whom an adult asks, in the workshop's language. */
function notesFor(
	{ message, isMinor }: { message: string; isMinor: boolean },
	language: LanguageId,
): string {
	const { say } = readerOf({ system: "metric", language }, MESSAGES[language]);
	return [message, isMinor ? say("online.send.minorNote") : ""]
		.filter(Boolean)
		.join("\n");
}

export type SendResult =
	| {
			readonly ok: true;
			readonly jobNumber: number;
			readonly kept: KeptCue;
	  }
	| { readonly ok: false; readonly held: Held }
	| { readonly ok: false; readonly code: "trap-full" | "cannot-be-made" }
	| {
			readonly ok: false;
			readonly code: "changed";
			readonly massG: number;
			readonly lowMinor: number;
			readonly highMinor: number;
	  };

/**
 * Sends a cue to the workshop. Everything is worked out anew from the answers with the settings of this
 * moment; where that is not what was seen, nothing is sent and the page says what it is now.
 */
export async function sendCue(
	request: z.input<typeof sendSchema>,
): Promise<SendResult> {
	const given = sendSchema.parse(request);
	if (given.website !== "") return { ok: false, code: "trap-full" };
	const settings = await currentSettings();
	const offer = await currentOffer();
	const { system } = await readReader();
	const { choices, problems } = readOnline(given.answers, offer, system);
	const cue = assess(choices, offer);
	const { massG, price } = cue;
	const isRefused = cue.findings.some(({ kind }) => kind === "refused");
	if (problems.length > 0 || isRefused || massG === null || price === null)
		return { ok: false, code: "cannot-be-made" };
	if (
		price.totalMinor !== given.seen.totalMinor ||
		Math.abs(massG.value - given.seen.massG) > 0.5
	)
		return {
			ok: false,
			code: "changed",
			massG: massG.value,
			lowMinor: price.lowMinor,
			highMinor: price.highMinor,
		};
	const admitted = await admit("send-online-cue", given.work);
	if (!admitted.ok) return admitted;
	const build = buildFromRequest({
		request: cue.request,
		gameId: choices.gameId,
		massG: choices.massG,
		balanceFromButtMm: choices.balanceFromButtMm,
		workshop: offer.workshop,
	});
	if (!build.ok) return { ok: false, code: "cannot-be-made" };
	const extras = { case: choices.case, tip: choices.tip, gripNotes: "" };
	const listed = jobPrice({
		prices: settings.prices,
		build: build.value,
		extras,
	});
	const content: JobContent = {
		schemaVersion: 1,
		build: withBillets(build.value),
		extras,
		price: listed.ok ? listed.value : null,
		quote: null,
		settingVersions: settings.versions,
	};
	const now = new Date();
	const sent = await sendOnlineCue(
		{
			requestKey: given.requestKey,
			cueId: given.cueId,
			answers: given.answers,
			deviceToken: await deviceToken(),
			challenge: admitted.challenge,
			job: {
				customerName: given.name,
				customerContact: given.contact,
				consentAt: now,
				content,
				by: "online",
				notes: notesFor(given, settings.header.language),
			},
		},
		now,
	);
	if (!sent.ok) return { ok: false, held: { code: "no-work" } };
	const { cue: kept, token, jobNumber } = sent;
	return {
		ok: true,
		jobNumber,
		kept: {
			id: kept.id,
			token,
			revision: kept.revision,
			expiresAt: linkExpiry(now).toISOString(),
		},
	};
}
