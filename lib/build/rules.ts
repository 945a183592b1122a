import type { CueDesign } from "@/lib/cue/design";
import { diameterAtMm } from "@/lib/cue/taper";
import type { CitationId } from "@/lib/reference/citations";
import type { SourcedConstant } from "@/lib/reference/estimate";
import { GAMES, type GameId } from "@/lib/reference/rules";

export interface RuleFinding {
	/** "cue-length", "cue-weight", "tip-width", "metal-ferrule-length", "tapered-form". */
	readonly rule: string;
	readonly ok: boolean;
	readonly field: string;
	readonly value: number;
	readonly bound: { readonly min?: number; readonly max?: number };
	readonly source: CitationId;
}

/** A cue against every published equipment rule of its game; empty where the game has no cue rule. */
export function checkRules(
	design: CueDesign,
	massG: number,
	gameId: GameId,
): readonly RuleFinding[] {
	const game = GAMES[gameId];
	const checks: RuleFinding[] = [];
	const atLeast = (p: Named, limit: SourcedConstant | null) => {
		if (limit)
			checks.push({
				...p,
				ok: p.value >= limit.value,
				bound: { min: limit.value },
				source: limit.source,
			});
	};
	const atMost = (p: Named, limit: SourcedConstant | null) => {
		if (limit)
			checks.push({
				...p,
				ok: p.value <= limit.value,
				bound: { max: limit.value },
				source: limit.source,
			});
	};
	atLeast(
		{ rule: "cue-length", field: "lengthMm", value: design.lengthMm },
		game.cueMinLengthMm,
	);
	atMost(
		{ rule: "cue-weight", field: "massG", value: massG },
		game.cueMaxMassG,
	);
	atMost(
		{
			rule: "tip-width",
			field: "tipDiameterMm",
			value: diameterAtMm(design, 0),
		},
		game.tipMaxDiameterMm,
	);
	atMost(
		{
			rule: "metal-ferrule-length",
			field: "ferrule.lengthMm",
			value: design.ferrule.lengthMm,
		},
		game.metalFerruleMaxLengthMm,
	);
	if (game.taperedForm) {
		const growthMm = smallestGrowthMm(design);
		checks.push({
			rule: "tapered-form",
			ok: growthMm >= 0,
			field: "taper",
			value: growthMm,
			bound: { min: 0 },
			source: game.taperedForm.source,
		});
	}
	return checks;
}

interface Named {
	readonly rule: string;
	readonly field: string;
	readonly value: number;
}

/** Smallest growth in diameter from one taper point to the next, tip to butt. */
function smallestGrowthMm(design: CueDesign): number {
	const growths = design.taper
		.slice(1)
		.map((point, i) => point.diameterMm - (design.taper[i]?.diameterMm ?? 0));
	return Math.min(...growths);
}
