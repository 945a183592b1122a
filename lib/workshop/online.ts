import { type Build, buildOf } from "@/lib/advice/build";
import { longestPieceMm } from "@/lib/advice/evaluate";
import { checkRules } from "@/lib/build/rules";
import type { CueDesign, CueRequest } from "@/lib/cue/design";
import { PLANING } from "@/lib/cue/flat";
import { weighCue } from "@/lib/cue/mass";
import { outside, type Refusal } from "@/lib/numerics/outcome";
import type { PriceEstimate } from "@/lib/price/estimate";
import type { Estimate } from "@/lib/reference/estimate";
import type { LeadTime } from "./lead-time";
import {
	CATALOGUED,
	type OnlineChoices,
	type OnlineField,
	type OnlineOffer,
	optionsFor,
	requestOf,
} from "./online-choices";
import { notesOn } from "./online-notes";
import { onlineLeadTime, onlinePrice } from "./online-price";

/**
 * What is to be said of one choice: "refused" keeps the cue from being made, "caution" is to be known,
 * "costs-more" is dearer or slower than the workshop's usual.
 */
export interface Finding extends Omit<Refusal, "field"> {
	readonly kind: "refused" | "caution" | "costs-more";
	readonly field: OnlineField;
}

/** Whether a cue can be made as it was chosen, and the build where there is one. */
export interface Judged {
	readonly choices: OnlineChoices;
	readonly request: CueRequest;
	/** Null where the shape itself cannot be made. */
	readonly build: Build | null;
	/** Empty where it can be made. */
	readonly refused: readonly Finding[];
}

/** A cue as its customer sees it. Plain JSON. */
export interface OnlineCue {
	readonly choices: OnlineChoices;
	/** With the workshop's densities. */
	readonly request: CueRequest;
	/** As finished; without added weight where the wanted weight cannot be had. Null: no such shape. */
	readonly design: CueDesign | null;
	readonly massG: Estimate | null;
	readonly balanceFromButtMm: Estimate | null;
	/** Without anything added. */
	readonly naturalMassG: Estimate | null;
	readonly longestPieceMm: number;
	/** Null where the price list has no amount for a choice. */
	readonly price: PriceEstimate | null;
	/** Null where the workshop's closed days leave no day. */
	readonly leadTime: LeadTime | null;
	readonly findings: readonly Finding[];
}

/**
 * Judges a cue by the models every other page takes: the build, the rules of its game, the workshop's
 * catalogue and price list.
 */
export function judge(choices: OnlineChoices, offer: OnlineOffer): Judged {
	const request = requestOf(choices, offer);
	const own = [
		...catalogueRefusals(choices, offer),
		...handSpliceRefusals(choices),
		...caseRefusals(choices, request, offer),
		...priceRefusals(choices, offer),
	];
	const built = buildOf(
		{
			request,
			wantedMassG: choices.massG,
			wantedBalanceFromButtMm: choices.balanceFromButtMm,
		},
		offer.workshop,
	);
	const refused = built.ok
		? [
				...own,
				...veneerRefusals(choices, built.value.design),
				...ruleRefusals(choices, built.value),
				...(built.value.plan.ok ? [] : asFindings(built.value.plan.refusals)),
			]
		: [...own, ...asFindings(built.refusals)];
	return {
		choices,
		request: built.ok ? built.value.request : request,
		build: built.ok ? built.value : null,
		refused: once(refused),
	};
}

/** The whole of what a customer is shown. */
export function assess(choices: OnlineChoices, offer: OnlineOffer): OnlineCue {
	const judged = judge(choices, offer);
	const { request, build, refused } = judged;
	const plan = build?.plan.ok ? build.plan.value : null;
	const design = plan?.finished ?? build?.design ?? null;
	const mass =
		design === null ? null : plan === null ? build?.natural : weighCue(design);
	const asked = { choices, request, hasAddedWeight: isWeighted(judged) };
	const price = onlinePrice(asked, offer);
	const lead = onlineLeadTime(asked, offer);
	return {
		choices,
		request,
		design,
		massG: mass?.massG ?? null,
		balanceFromButtMm: mass?.balanceFromButtMm ?? null,
		naturalMassG: build?.natural.massG ?? null,
		longestPieceMm: longestPieceMm(request),
		price: price.ok ? price.value : null,
		leadTime: lead.ok ? lead.value : null,
		findings: [...refused, ...notesOn({ ...asked, offer, plan })],
	};
}

/** Metal is priced and timed where the plan has any, and where it is not known yet but wished for. */
export const isWeighted = ({
	choices,
	build,
}: Pick<Judged, "choices" | "build">) =>
	build?.plan.ok ? build.plan.value.metalMassG > 0 : choices.massG !== null;

const refusedAt = (
	field: OnlineField,
	refusal: Omit<Refusal, "field">,
): Finding => ({ ...refusal, kind: "refused", field });

function catalogueRefusals(
	choices: OnlineChoices,
	offer: OnlineOffer,
): readonly Finding[] {
	const options = optionsFor(offer, choices.gameId);
	const missing = CATALOGUED.filter(
		(field) =>
			!(options[field] as readonly unknown[]).includes(choices[field]) &&
			choices[field] !== null,
	).map((field) =>
		refusedAt(field, { code: "not-in-catalogue", value: choices[field] }),
	);
	const ranges = (
		["lengthMm", "buttDiameterMm", "tipDiameterMm"] as const
	).flatMap((field) => {
		const [min, max] = offer.workshop[field];
		const refusal = outside(field, choices[field], min, max);
		return refusal
			? [refusedAt(field, { ...refusal, code: "out-of-catalogue" })]
			: [];
	});
	return [...missing, ...ranges];
}

/** What is planed on the points of a hand splice needs one. */
const handSpliceRefusals = (choices: OnlineChoices): readonly Finding[] =>
	choices.splice === "hand-four-point"
		? []
		: (["pointsFromButtMm", "pointsBetween", "veneer"] as const)
				.filter((field) => choices[field] !== null)
				.map((field) =>
					refusedAt(field, { code: "hand-splice-only", value: choices.splice }),
				);

function caseRefusals(
	choices: OnlineChoices,
	request: CueRequest,
	{ cases }: OnlineOffer,
): readonly Finding[] {
	const holds = cases.find(({ name }) => name === choices.case)?.longestPieceMm;
	const pieceMm = longestPieceMm(request);
	return holds === undefined || pieceMm <= holds
		? []
		: [
				refusedAt("case", {
					code: "case-too-short",
					value: choices.case,
					facts: { pieceMm, holdsMm: holds },
				}),
			];
}

/** What the catalogue does not have has no price either, and that is said already. */
function priceRefusals(
	choices: OnlineChoices,
	offer: OnlineOffer,
): readonly Finding[] {
	const price = onlinePrice({ choices, hasAddedWeight: false }, offer);
	if (price.ok) return [];
	const options = optionsFor(offer, choices.gameId);
	return asFindings(price.refusals).filter(
		({ field, value }) =>
			field in options &&
			(options[field as keyof typeof options] as readonly unknown[]).includes(
				value,
			),
	);
}

/**
 * The wood over the veneers is a wedge of its own: its flat is held to the same share of the butt's
 * radius as the first, or points would be left as thin as paper.
 */
function veneerRefusals(
	choices: OnlineChoices,
	design: CueDesign,
): readonly Finding[] {
	if (choices.veneer === null) return [];
	const outermostMm = Math.max(
		...design.splice.cuts
			.filter(({ part }) => part === "first splice pair")
			.map(({ buttOffsetMm }) => buttOffsetMm),
	);
	const roomMm =
		(PLANING.coreHalfWidthMm.maxButtShare * choices.buttDiameterMm) / 2;
	return outermostMm <= roomMm
		? []
		: [
				refusedAt("veneer", {
					code: "veneers-too-thick",
					value: choices.veneerCount * choices.veneerMm,
					max: choices.veneerCount * choices.veneerMm - (outermostMm - roomMm),
					facts: { buttDiameterMm: choices.buttDiameterMm },
				}),
			];
}

function ruleRefusals(
	{ gameId, massG }: OnlineChoices,
	{ plan, design, natural }: Build,
): readonly Finding[] {
	return checkRules(
		plan.ok ? plan.value.finished : design,
		massG ?? natural.massG.value,
		gameId,
	)
		.filter(({ ok }) => !ok)
		.map(({ rule, field, value, bound, source }) =>
			refusedAt(choiceBehind(field)[0], {
				code: "rule-broken",
				value,
				...bound,
				facts: { rule, gameId, source },
			}),
		);
}

const asFindings = (refusals: readonly Refusal[]): readonly Finding[] =>
	refusals
		// Said of each choice that needs the hand splice.
		.filter(({ code }) => code !== "hand-splice-only")
		.map(({ field, ...refusal }) => {
			const [choice, code = refusal.code] = choiceBehind(field);
			return refusedAt(choice, { ...refusal, code });
		});

type Behind = readonly [field: OnlineField, code?: string];

/** The choice that a refusal of the models is about, and what it comes to there where that is something else. */
function choiceBehind(field: string): Behind {
	const known = CHOICES_BEHIND.find(([start]) => field.startsWith(start));
	if (known === undefined) throw new RangeError(`no choice is behind ${field}`);
	return known[1];
}

/** By how the name begins, the longer before the shorter. */
const CHOICES_BEHIND: readonly (readonly [string, Behind])[] = [
	["lengthMm", ["lengthMm"]],
	["buttDiameterMm", ["buttDiameterMm"]],
	["tipDiameterMm", ["tipDiameterMm"]],
	["shaftWood", ["shaftWood"]],
	["buttWood", ["buttWood"]],
	["taper", ["taperShape"]],
	["ferrule", ["ferruleMetal"]],
	["splicing.pointsBetween", ["pointsBetween", "cannot-be-planed"]],
	["splicing.points.veneers.", ["veneerMm"]],
	["splicing.points.veneers", ["veneerCount"]],
	["splicing.points.coreHalfWidthMm", ["buttDiameterMm", "butt-too-thin"]],
	["splicing.points.planeAngleDeg", ["pointsFromButtMm", "cannot-be-planed"]],
	["splicing.points", ["pointsFromButtMm"]],
	["splicing.frontWedge", ["frontWedge", "cannot-be-planed"]],
	["splicing.allRound.count", ["wedgeCount"]],
	["splicing.allRound", ["wedges", "cannot-be-planed"]],
	["fittings.jointFromButtMm", ["jointFromButtMm"]],
	["fittings.endPieceMm", ["endPieceMm"]],
	["fittings.tipHeightMm", ["tip"]],
	["fittings.domeRadiusMm", ["tipDiameterMm"]],
	["wantedMassG", ["massG"]],
	["massG", ["massG"]],
	["wantedBalanceFromButtMm", ["balanceFromButtMm"]],
	["tip", ["tip"]],
	["case", ["case"]],
	["densities", ["buttWood"]],
];

/** A thing said twice of one choice is said once. */
function once(findings: readonly Finding[]): readonly Finding[] {
	const said = new Set<string>();
	return findings.filter(({ field, code }) => {
		const key = `${field} ${code}`;
		return !said.has(key) && said.add(key);
	});
}
