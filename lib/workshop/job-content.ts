import { type Build, buildOf } from "@/lib/advice/build";
import type { Basis } from "@/lib/advice/figure";
import { type FrozenBuild, freezeBuild } from "@/lib/advice/frozen-build";
import type { SpecContent } from "@/lib/advice/spec";
import { MODEL_VERSION } from "@/lib/advice/version";
import type { WorkshopOffer } from "@/lib/advice/workshop-offer";
import { type BilletPick, billetPicks } from "@/lib/build/billet-window";
import type { CueRequest } from "@/lib/cue/design";
import { accept, type Outcome } from "@/lib/numerics/outcome";
import type { PriceEstimate } from "@/lib/price/estimate";
import type { GameId } from "@/lib/reference/rules";
import type { JobExtras } from "./job-extras";
import type { MayVary } from "./may-vary";

/** A figure the bench builds to, and what it rests on. Unit mm or g, as the owner says. */
export interface Target {
	readonly value: number;
	readonly basis: Basis;
}

export type TargetId = "length" | "mass" | "butt" | "tip" | "balance";

/**
 * All that a job sheet needs, whoever asked for the cue. Of the person only what the bench works with:
 * the playing hand and the readings of the grip circle. Plain JSON.
 */
export interface BuildContent extends FrozenBuild {
	readonly modelVersion: string;
	readonly targets: Readonly<Record<TargetId, Target>>;
	/** The woods to pick, see withBillets; empty until then. */
	readonly billets: readonly BilletPick[];
	readonly hand: "right" | "left" | null;
	readonly gripCircleReadingsMm: readonly number[];
}

/** A saved spec as the bench builds it, from the stored numbers alone. */
export function buildFromSpec(spec: SpecContent): BuildContent {
	const { figures, input } = spec;
	const target = (id: TargetId): Target => ({
		value: id === "balance" ? figures.balance.exact : figures[id].value,
		basis: figures[id].basis,
	});
	return {
		...frozenOf(spec),
		modelVersion: spec.modelVersion,
		targets: {
			length: target("length"),
			mass: target("mass"),
			butt: target("butt"),
			tip: target("tip"),
			balance: target("balance"),
		},
		billets: [],
		hand: input.hand ?? null,
		gripCircleReadingsMm: input.player.gripCircleReadingsMm ?? [],
	};
}

export interface BuildWish {
	/** With the workshop's own densities in it, where it has them. */
	readonly request: CueRequest;
	readonly gameId: GameId;
	/** Null: the wood's own weight, in whole grams. */
	readonly massG: number | null;
	/** Null: the weight as far back as the bench usually puts it. */
	readonly balanceFromButtMm: number | null;
	readonly hand?: "right" | "left" | null;
	readonly gripCircleReadingsMm?: readonly number[];
	/** Whose metal and densities are taken where the request names none. */
	readonly workshop?: WorkshopOffer;
}

/**
 * A cue asked for by its figures, worked out by the models of a fitting. Refusals: those of the
 * design, of the added weight, and "rule-broken".
 */
export function buildFromRequest(wish: BuildWish): Outcome<BuildContent> {
	const { request, gameId, hand = null, gripCircleReadingsMm = [] } = wish;
	const built = buildOf(
		{
			request,
			wantedMassG: wish.massG,
			wantedBalanceFromButtMm: wish.balanceFromButtMm,
		},
		wish.workshop,
	);
	if (!built.ok) return built;
	const massG = wish.massG ?? Math.round(built.value.natural.massG.value);
	const frozen = freezeBuild({ build: built.value, massG, gameId });
	if (!frozen.ok) return frozen;
	return accept({
		...frozen.value,
		modelVersion: MODEL_VERSION,
		targets: {
			length: { value: request.lengthMm, basis: "wish" },
			mass: { value: massG, basis: wish.massG === null ? "derived" : "wish" },
			butt: { value: request.buttDiameterMm, basis: "wish" },
			tip: { value: request.tipDiameterMm, basis: "wish" },
			balance: {
				value: balanceOf(built.value),
				basis: wish.balanceFromButtMm === null ? "derived" : "wish",
			},
		},
		billets: [],
		hand,
		gripCircleReadingsMm,
	});
}

/**
 * The build with the billets to pick, which takes up to a second for a butt of many points: worked out
 * once where a job is opened or a sheet is printed, not while a cue is being put together.
 */
export function withBillets(build: BuildContent): BuildContent {
	const { design, targets, addedWeight } = build;
	return {
		...build,
		billets: billetPicks({
			design,
			wanted: {
				massG: targets.mass.value,
				balanceFromButtMm: targets.balance.value,
			},
			metal: addedWeight.metal,
		}),
	};
}

/** The content with the billets to pick, worked out where they are not there yet. */
export const withPicks = (content: JobContent): JobContent =>
	content.build.billets.length > 0
		? content
		: { ...content, build: withBillets(content.build) };

const balanceOf = ({ plan, natural }: Build): number =>
	(plan.ok ? plan.value.balanceAfterFromButtMm : natural.balanceFromButtMm)
		.value;

/** The build's own members, without the spec's others. */
const frozenOf = (spec: SpecContent): FrozenBuild => ({
	gameId: spec.gameId,
	request: spec.request,
	stations: spec.stations,
	naturalMassG: spec.naturalMassG,
	naturalBalanceFromButtMm: spec.naturalBalanceFromButtMm,
	addedWeight: spec.addedWeight,
	parts: spec.parts,
	design: spec.design,
	rules: spec.rules,
	workshopCautions: spec.workshopCautions,
});

/** What a price is made of, in whole minor units; the quote may name another sum. */
export type JobPrice = Pick<
	PriceEstimate,
	"currency" | "minorPerUnit" | "basis" | "lines" | "totalMinor"
>;

export interface Quote {
	readonly priceMinor: number;
	/** ISO 4217. */
	readonly currency: string;
	readonly minorPerUnit: number;
	/** ISO date: the last day on which it can be agreed to. */
	readonly validUntil: string;
	readonly mayVary: readonly MayVary[];
	/** In the workshop's own words, shown to the customer. */
	readonly note: string;
}

/** What a revision of a job holds. Plain JSON, free of the customer's name and address. */
export interface JobContent {
	readonly schemaVersion: 1;
	readonly build: BuildContent;
	readonly extras: JobExtras;
	/** By the price list; null where the list has no amount for a chosen part. */
	readonly price: JobPrice | null;
	/** Null until the workshop has quoted. */
	readonly quote: Quote | null;
	/** Which version of each kind of setting it was worked out with. */
	readonly settingVersions: Readonly<Record<string, number>>;
}
