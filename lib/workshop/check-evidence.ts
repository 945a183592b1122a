import type { BilletDensity } from "@/lib/cue/design";
import {
	accept,
	type Outcome,
	type Refusal,
	refuse,
} from "@/lib/numerics/outcome";
import type { WoodId } from "@/lib/reference/woods";
import { billetsOf, type DecidedCheck } from "./check";
import type { BuildContent } from "./job-content";
import { densitiesSaid, weighedCue } from "./weighed-cue";
import { isWild, type WoodBand } from "./wood-evidence";

export interface WoodSaid extends BilletDensity {
	readonly wood: WoodId;
}

/** What the latest check says of the woods, and why it is asked about before it counts; null where it is not. */
export interface CheckEvidence {
	readonly said: readonly WoodSaid[];
	readonly doubt: Refusal | null;
}

/**
 * The densities that a check implies, with the billets weighed for this cue before. A doubt is
 * "not-this-build" (weight and balance together less likely than once in a thousand) or "wild-density"
 * (a wood so far from what the workshop's cues gave so far). Refusals: those of weighedCue, of a billet,
 * and "says-nothing".
 */
export function evidenceOf(p: {
	build: Pick<BuildContent, "design" | "addedWeight">;
	/** Latest first; the first is the one that speaks. */
	checks: readonly Pick<DecidedCheck, "stage" | "content">[];
	bandOf: (wood: WoodId) => WoodBand;
}): Outcome<CheckEvidence> {
	const [latest] = p.checks;
	if (latest === undefined)
		throw new RangeError("evidence is asked of no check");
	const weighed = weighedCue(p.build, latest.stage, latest.content.figures);
	if (!weighed.ok) return weighed;
	const billets = billetsOf(p.checks);
	if (!billets.ok) return billets;
	const plain = densitiesSaid(weighed.value, billets.value);
	const taken = plain.ok
		? plain
		: densitiesSaid(weighed.value, billets.value, true);
	if (!taken.ok) return taken;
	const said = taken.value.woods.flatMap(({ wood, evidenceKgM3 }) =>
		evidenceKgM3 === null ? [] : [{ wood, ...evidenceKgM3 }],
	);
	if (said.length === 0)
		return refuse({ code: "says-nothing", field: "figures", value: null });
	const [unlikely] = plain.ok ? [] : plain.refusals;
	const wild = said.find((one) => isWild(p.bandOf(one.wood), one));
	return accept({
		said,
		doubt:
			unlikely ??
			(wild === undefined
				? null
				: {
						code: "wild-density",
						field: "densityKgM3",
						value: wild.kgM3,
						facts: {
							wood: wild.wood,
							expectedKgM3: p.bandOf(wild.wood).next.kgM3,
							sdKgM3: p.bandOf(wild.wood).next.sd,
						},
					}),
	});
}
