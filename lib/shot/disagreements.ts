import type { CitationId } from "@/lib/reference/citations";
import { squirtDeg, squirtFromImpulseLineDeg } from "./deflection";
import { FOLLOWING_BALL_FACTOR, HALF_SINE_FORCE_FACTOR } from "./endmass";
import { efficiencyRatio, offsetHitSpeedRatio } from "./speed";

/** Two answers to one question, for one cue and ball. */
export interface Disagreement {
	readonly id:
		| "off-centre-speed"
		| "offset-read-from"
		| "tip-loss"
		| "what-drives-the-tip";
	/** "models": at most one can be right. "reading": one model, two ways to read the offset. */
	readonly kind: "models" | "reading";
	readonly first: { readonly value: number; readonly source: CitationId };
	readonly second: { readonly value: number; readonly source: CitationId };
	/** second/first − 1. */
	readonly gapFraction: number;
}

/** A typical loss of energy of 13 %, printed beside e = 0.73 for the same tip in TP A.30. */
const PRINTED_EFFICIENCY = 0.87;

/**
 * Where the published models this project uses part, at half the ball's radius, and by how much. The
 * end-mass row is this project's own pair of limits for a bare slender shaft. Leaves a row out where one
 * side has no answer.
 */
export function disagreements(p: {
	readonly cueMassG: number;
	readonly ballMassG: number;
	readonly endMassG: number;
	readonly restitutionRatio: number;
}): readonly Disagreement[] {
	const offsetRatio = 0.5;
	const speed = offsetHitSpeedRatio({ ...p, offsetRatio });
	const rows: Disagreement[] = [];
	if (speed.constantEfficiency !== null)
		rows.push(
			row("off-centre-speed", "models", [
				{ value: speed.constantEfficiency, source: "alciatore-a30" },
				{ value: speed.constantRestitution, source: "kim-2022" },
			]),
		);
	rows.push(
		row("offset-read-from", "reading", [
			{ value: squirtDeg({ ...p, offsetRatio }), source: "alciatore-a31" },
			{
				value: squirtFromImpulseLineDeg({ ...p, offsetRatio }),
				source: "shepard-2001",
			},
		]),
		row("tip-loss", "models", [
			{ value: efficiencyRatio(p), source: "alciatore-a30" },
			{ value: PRINTED_EFFICIENCY, source: "alciatore-a30" },
		]),
		row("what-drives-the-tip", "models", [
			{ value: FOLLOWING_BALL_FACTOR, source: "project-judgement" },
			{ value: HALF_SINE_FORCE_FACTOR, source: "project-judgement" },
		]),
	);
	return rows;
}

const row = (
	id: Disagreement["id"],
	kind: Disagreement["kind"],
	[first, second]: readonly [Disagreement["first"], Disagreement["second"]],
): Disagreement => ({
	id,
	kind,
	first,
	second,
	gapFraction: second.value / first.value - 1,
});
