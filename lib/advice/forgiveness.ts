import { TEMPLATE } from "@/lib/cue/template";
import type { Estimate } from "@/lib/reference/estimate";
import { lesserOf } from "@/lib/shot/lesser";
import { MISCUE_OFFSET } from "@/lib/shot/published";
import { tipTradeoff } from "@/lib/shot/tip";
import type { Level } from "./input";
import { LEVEL_SIDE } from "./judgement";
import { normalShareBelow } from "./normal";

/** The dome's edge does not depend on the end mass, nor on the game. */
const ANY_END_MASS_G: Estimate = {
	value: 5,
	sd: 0,
	standing: "assumed",
	sources: ["project-judgement"],
};

/**
 * Share of side shots the tip still holds when a player of that level aims at the level's side and
 * misses it by the level's spread: P(aimed + error < least of the miscue limit and the dome's edge),
 * that least taken as normal with Clark's mean and spread.
 */
export function forgivenessShare(p: {
	level: Level;
	tipDiameterMm: number;
	domeRadiusMm?: number;
}): number {
	const { domeOffsetRatio } = tipTradeoff({
		gameId: "snooker",
		tipDiameterMm: p.tipDiameterMm,
		domeRadiusMm: p.domeRadiusMm ?? TEMPLATE.domeRadiusMm,
		endMassG: ANY_END_MASS_G,
	});
	const limit = lesserOf(MISCUE_OFFSET, domeOffsetRatio);
	const aimed = LEVEL_SIDE[p.level];
	return normalShareBelow(
		(limit.value - aimed.offsetRatio) / Math.hypot(limit.sd, aimed.sdRatio),
	);
}
