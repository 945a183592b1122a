import type { CueDesign } from "@/lib/cue/design";
import { weighCue } from "@/lib/cue/mass";
import { densityKgM3 } from "@/lib/cue/materials";
import type { Estimate } from "@/lib/reference/estimate";
import type { MetalId } from "@/lib/reference/metals";
import type { WoodId } from "@/lib/reference/woods";
import { planAddedWeight } from "./added-weight";
import { FINISHED_TOLERANCE } from "./tolerance";

/**
 * Densities at 12 % moisture of one wood with which the finished cue can be brought to the wanted
 * weight within the bench's tolerance, the other woods as the design has them. Null: no bound within
 * what was looked at.
 */
export interface DensityWindow {
	/** Lighter wood needs more metal than the bore holds. */
	readonly lowKgM3: number | null;
	/** Heavier wood is too heavy by itself. */
	readonly highKgM3: number | null;
}

/** A wood to pick billets of. */
export interface BilletPick {
	readonly wood: WoodId;
	readonly use: "shaft" | "butt" | "decoration";
	/** As the build was worked out with. */
	readonly densityKgM3: Estimate;
	/** Null for decoration, whose share of the weight is small, and where no density gives the weight. */
	readonly window: DensityWindow | null;
}

/** Looked at within this share of the design's own density, either side. */
const REACH_SHARE = 0.4;
const STEP_KG_M3 = 0.5;

/** The woods of a cue in the order they are picked: shaft, butt, decoration in glue order. */
export function billetPicks({
	design,
	wantedMassG,
	metal,
}: {
	/** With or without its metal: it is planned anew. */
	design: CueDesign;
	wantedMassG: number;
	metal: MetalId;
}): readonly BilletPick[] {
	const bare = { ...design, addedWeight: [], plugs: [] };
	const { shaftWood, buttWood, splice } = design;
	const pick = (wood: WoodId, use: BilletPick["use"]): BilletPick => ({
		wood,
		use,
		densityKgM3: densityKgM3(bare, wood),
		window:
			use === "decoration"
				? null
				: densityWindow({ bare, wantedMassG, metal, wood }),
	});
	const decoration = [...new Set(splice.cuts.map(({ wood }) => wood))].filter(
		(wood) => wood !== shaftWood && wood !== buttWood,
	);
	return [
		pick(shaftWood, "shaft"),
		...(buttWood === shaftWood ? [] : [pick(buttWood, "butt")]),
		...decoration.map((wood) => pick(wood, "decoration")),
	];
}

function densityWindow({
	bare,
	wantedMassG,
	metal,
	wood,
}: {
	bare: CueDesign;
	wantedMassG: number;
	metal: MetalId;
	wood: WoodId;
}): DensityWindow | null {
	const own = densityKgM3(bare, wood).value;
	const natural = weighCue(bare);
	const inWoodG = natural.parts
		.filter(({ material }) => material === wood)
		.reduce((sum, { massG }) => sum + massG.value, 0);
	const lightestG = wantedMassG - FINISHED_TOLERANCE.massG;
	const heaviestG = wantedMassG + FINISHED_TOLERANCE.massG;
	// The natural weight is linear in the density of each wood.
	const high = own * (1 + (heaviestG - natural.massG.value) / inWoodG);
	const [lowest, highest] = [own * (1 - REACH_SHARE), own * (1 + REACH_SHARE)];
	/** A cue that is too heavy is not refused by the lightest weight: the bound above sees to it. */
	const isReached = (kgM3: number) => {
		const plan = planAddedWeight({
			design: {
				...bare,
				densities: { ...bare.densities, [wood]: { kgM3, sd: 0 } },
			},
			wantedMassG: lightestG,
			metal,
		});
		return (
			plan.ok ||
			plan.refusals.every(({ code }) => code === "weight-below-natural")
		);
	};
	let reached = Math.min(high, highest);
	if (high < lowest || !isReached(reached)) return null;
	const highKgM3 = high > highest ? null : high;
	if (isReached(lowest)) return { lowKgM3: null, highKgM3 };
	let missed = lowest;
	while (reached - missed > STEP_KG_M3) {
		const middle = (reached + missed) / 2;
		if (isReached(middle)) reached = middle;
		else missed = middle;
	}
	return { lowKgM3: reached, highKgM3 };
}
