import {
	accept,
	type Caution,
	type Outcome,
	refuse,
} from "@/lib/numerics/outcome";
import type { Estimate } from "@/lib/reference/estimate";
import type { CueDesign } from "./design";
import {
	buildsFor,
	type ExplainedBuild,
	explain,
	type StiffnessAt,
} from "./present-builds";
import { type PresentCue, refusalsOf, taperOf } from "./present-reading";

export interface PresentCueFit {
	readonly inertiaAboutBalanceKgM2: Estimate;
	readonly inertiaAboutGripKgM2: Estimate | null;
	readonly inertiaAboutAxisKgM2: Estimate;
	/** At four stations clear of the usual joints. */
	readonly stiffness: readonly StiffnessAt[];
	/** Metal added in the butt, net of wood. */
	readonly addedMassG: Estimate;
	/** The build that explains the readings best, and its share of all that do. */
	readonly design: CueDesign;
	readonly designShare: number;
	readonly cautions: readonly Caution[];
}

/** χ² of two readings passed once in a thousand: −2·ln 0.001. */
const MAX_SURPRISE2 = 13.815510557964274;

/**
 * Inertia and stiffness bands of a cue in use from its length, weight, balance, tip and diameters.
 * Every usual build (woods, splice, with or without metal in the butt) is conditioned on weight and
 * balance; each counts by how well it foretold them. Weight and balance tie the inertia down closely
 * whatever the build; the stiffness band is mostly the spread of the woods' moduli.
 * Refuses readings outside what the project builds, and "not-explained" where no usual build gives them.
 */
export function fitPresentCue(present: PresentCue): Outcome<PresentCueFit> {
	const refusals = refusalsOf(present);
	if (refusals.length > 0) return refuse(...refusals);
	const usual = buildsFor(present, taperOf(present));
	if (!usual.ok) return usual;
	const builds = usual.value.map((build) => explain(build, present));
	const plausible = builds.filter((one) => one.surprise2 <= MAX_SURPRISE2);
	const nearest = builds.reduce((a, b) => (b.surprise2 < a.surprise2 ? b : a));
	if (plausible.length === 0)
		return refuse({
			code: "not-explained",
			field: "massG",
			value: present.massG,
			facts: {
				balanceFromButtMm: present.balanceFromButtMm,
				nearestMassG: nearest.expectedMassG,
				nearestBalanceFromButtMm: nearest.expectedBalanceFromButtMm,
				surprise2: nearest.surprise2,
				maxSurprise2: MAX_SURPRISE2,
			},
		});
	const highest = Math.max(...plausible.map((one) => one.logEvidence));
	const weights = plausible.map((one) => Math.exp(one.logEvidence - highest));
	const total = weights.reduce((sum, one) => sum + one, 0);
	const shares = weights.map((one) => one / total);
	const mixed = (of: (one: ExplainedBuild) => { value: number; sd: number }) =>
		mixture(plausible.map(of), shares);
	const best = shares.indexOf(Math.max(...shares));
	const chosen = plausible[best];
	if (!chosen) throw new Error("no build although some are plausible");
	return accept({
		inertiaAboutBalanceKgM2: mixed((one) => one.inertiaAboutBalanceKgM2),
		inertiaAboutGripKgM2:
			present.gripFromButtMm === undefined
				? null
				: mixed((one) => one.inertiaAboutGripKgM2),
		inertiaAboutAxisKgM2: mixed((one) => one.inertiaAboutAxisKgM2),
		stiffness: chosen.stiffness.map(({ stationMm }, i) => ({
			stationMm,
			stiffnessNm2: mixed(
				(one) => one.stiffness[i]?.stiffnessNm2 ?? { value: 0, sd: 0 },
			),
		})),
		addedMassG: mixed((one) => one.addedMassG),
		design: chosen.design,
		designShare: shares[best] ?? 0,
		cautions: cautionsFor(present),
	});
}

function mixture(
	parts: readonly { value: number; sd: number }[],
	shares: readonly number[],
): Estimate {
	const value = parts.reduce(
		(sum, one, i) => sum + (shares[i] ?? 0) * one.value,
		0,
	);
	const variance = parts.reduce(
		(sum, one, i) =>
			sum + (shares[i] ?? 0) * (one.sd ** 2 + (one.value - value) ** 2),
		0,
	);
	return {
		value,
		sd: Math.sqrt(variance),
		standing: "derived",
		sources: ["measured-here", "wood-handbook-2021", "wood-compilation"],
	};
}

function cautionsFor(present: PresentCue): readonly Caution[] {
	const unknown = (
		["shaftWood", "buttWood", "splice", "layout"] as const
	).filter((name) => present[name] === undefined);
	return unknown.length === 0
		? []
		: [{ code: "build-guessed", facts: { unknown: unknown.join(", ") } }];
}
