import {
	accept,
	type Caution,
	type Outcome,
	refuse,
} from "@/lib/numerics/outcome";
import { bodyFrom } from "@/lib/player/body";
import {
	forecastStature,
	monthsAfter,
	monthsToGrow,
	monthsToRemeasure,
} from "@/lib/player/growth";
import type { PlayerMeasures } from "@/lib/player/measures";
import type { Sex } from "@/lib/reference/body-adult";
import { type Band, band90, type Estimate } from "@/lib/reference/estimate";
import type { StanceAnswers } from "./answers";
import { reachFrom } from "./reach";

/** What one cue grows by, mm. Common practice, no source. */
export const LENGTHENING = {
	/** Screw-in piece at the butt end. */
	endPieceMm: [50, 150],
	/** Longest slip-on or screw-in extension still pleasant to play with. */
	extensionMostMm: 300,
} as const;

/** Add a piece once the preferred length is this far past the cue, mm: an inch. Assumed. */
const WORTH_ADDING_MM = 25.4;

export interface GrowthStep {
	readonly months: number;
	readonly onDate: string;
	readonly statureMm: Estimate;
	readonly lengthMm: Estimate;
	/** Grip circle grown with the hand, when one was read. */
	readonly circleMm: Estimate | null;
	/** What the cue of today lacks then, mm. */
	readonly lackMm: Band;
	readonly fitting: "as-it-is" | "end-piece" | "extension" | "new-cue";
}

export interface GrowthPlan {
	readonly cueLengthMm: number;
	readonly steps: readonly GrowthStep[];
	readonly remeasureMonths: number | null;
	readonly remeasureOn: string | null;
	/** Months until an end piece is worth adding: soonest by the forecast's upper band, likely at the held percentile. */
	readonly addPieceMonths: {
		readonly soonest: number | null;
		readonly likely: number | null;
	} | null;
	readonly cautions: readonly Caution[];
}

const HORIZON_MONTHS = [0, 6, 12, 24, 36] as const;

/**
 * How a junior's cue may grow instead of being replaced. Stature is forecast at the held percentile
 * with its published error; arms, hand and reach follow by the body model of that stature and age.
 * Dates come in as ISO text. Ranges and dates to measure again, never a promise.
 */
export function growthPlan(p: {
	measures: PlayerMeasures & { readonly ageYears: number };
	answers: StanceAnswers;
	/** Cue played or about to be built; left out: the preferred length of today. */
	cueLengthMm?: number;
	circleMm?: Estimate;
	today: string;
}): Outcome<GrowthPlan> {
	const { measures, answers, today } = p;
	const now = bodyFrom(measures);
	if (!now.ok) return now;
	const child = {
		ageYears: measures.ageYears,
		statureMm: now.value.statureMm.value,
		sex: measures.sex,
	};
	// Spans and grip points measured today do not hold for a grown body: only style does.
	const style: StanceAnswers = {
		...answers,
		bridgeToGripMm: undefined,
		gripFromButtMm: undefined,
		bridgeLengthMm: undefined,
		cueInHandMm: undefined,
	};
	const fitted = reachFrom({ body: now.value, answers });
	if (!fitted.ok) return fitted;
	const plain = lengthAt({ ...child, style });
	if (!plain.ok) return plain;
	const cueLengthMm = p.cueLengthMm ?? fitted.value.lengthMm.value;
	// What measuring told beyond stature and age stays with the player as they grow.
	const offsetMm = fitted.value.lengthMm.value - plain.value.lengthMm;

	const steps: GrowthStep[] = [];
	const cautions: Caution[] = [];
	let perStature = 0;
	for (const months of HORIZON_MONTHS) {
		const forecast = forecastStature(child, months);
		if (!forecast.ok) return refuse(...forecast.refusals);
		const { statureMm } = forecast.value;
		if (months === 0) cautions.push(...forecast.value.cautions);
		const grownAt = (stature: number) =>
			lengthAt({
				statureMm: stature,
				ageYears: child.ageYears + months / 12,
				sex: child.sex,
				style,
			});
		const grown = grownAt(statureMm.value);
		const taller = grownAt(statureMm.value + 10);
		if (!grown.ok) return grown;
		if (!taller.ok) return taller;
		perStature = (taller.value.lengthMm - grown.value.lengthMm) / 10;
		// Growth since today carries its own doubt; today's doubt about the length is shared by all steps.
		const growthSd = perStature * (months === 0 ? 0 : statureMm.sd);
		const lengthMm: Estimate = {
			value: grown.value.lengthMm + offsetMm,
			sd: Math.hypot(fitted.value.lengthMm.sd, growthSd),
			standing: "derived",
			sources: [
				...new Set([...fitted.value.lengthMm.sources, ...statureMm.sources]),
			],
		};
		const lackMm = band90({
			value: lengthMm.value - cueLengthMm,
			sd: growthSd,
		});
		const lack = lengthMm.value - cueLengthMm;
		steps.push({
			months,
			onDate: monthsAfter(today, months),
			statureMm,
			lengthMm,
			circleMm: p.circleMm
				? grownCircle(p.circleMm, grown.value.handMm / plain.value.handMm)
				: null,
			lackMm,
			fitting:
				lack < WORTH_ADDING_MM
					? "as-it-is"
					: lack <= LENGTHENING.endPieceMm[1]
						? "end-piece"
						: lack <= LENGTHENING.extensionMostMm
							? "extension"
							: "new-cue",
		});
	}
	const wait = monthsToRemeasure(measures.ageYears);
	const first = steps[0] as GrowthStep;
	const growthMm =
		(WORTH_ADDING_MM - (first.lengthMm.value - cueLengthMm)) /
		Math.max(perStature, 0.05);
	const due =
		growthMm < 1 ? null : monthsToGrow(child, Math.min(growthMm, 1000));
	if (steps.some((s) => s.fitting !== "as-it-is"))
		cautions.push({ code: "lengthening-shifts-balance" });
	return accept({
		cueLengthMm,
		steps,
		remeasureMonths: wait,
		remeasureOn: wait === null ? null : monthsAfter(today, wait),
		addPieceMonths: due?.ok ? due.value : null,
		cautions,
	});
}

function lengthAt(p: {
	statureMm: number;
	ageYears: number;
	sex?: Sex;
	style: StanceAnswers;
}): Outcome<{ lengthMm: number; handMm: number }> {
	const body = bodyFrom({
		statureMm: p.statureMm,
		ageYears: p.ageYears,
		sex: p.sex,
	});
	if (!body.ok) return body;
	const reach = reachFrom({ body: body.value, answers: p.style });
	if (!reach.ok) return reach;
	return accept({
		lengthMm: reach.value.lengthMm.value,
		handMm: body.value.handLengthMm.value,
	});
}

const grownCircle = (circle: Estimate, ratio: number): Estimate => ({
	value: circle.value * ratio,
	sd: circle.sd * ratio,
	standing: "derived",
	sources: circle.sources,
});
