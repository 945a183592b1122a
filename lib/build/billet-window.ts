import type { CueDesign } from "@/lib/cue/design";
import { massFrom } from "@/lib/cue/mass";
import { densityKgM3 } from "@/lib/cue/materials";
import type { Estimate } from "@/lib/reference/estimate";
import type { MetalId } from "@/lib/reference/metals";
import type { WoodId } from "@/lib/reference/woods";
import { type Job, jobFor } from "./load";
import { familiesFor } from "./placements";
import { FINISHED_TOLERANCE } from "./tolerance";

/**
 * Densities at 12 % moisture of one wood with which metal can bring the cue to the wanted weight and
 * balance, both within the bench's tolerance, the other woods as the design has them. Null: no bound
 * within what was looked at.
 */
export interface DensityWindow {
	readonly lowKgM3: number | null;
	readonly highKgM3: number | null;
}

/** A wood to pick billets of. */
export interface BilletPick {
	readonly wood: WoodId;
	readonly use: "shaft" | "butt" | "decoration";
	/** As the build was worked out with. */
	readonly densityKgM3: Estimate;
	/** Null for decoration, whose share of the weight is small. */
	readonly window: DensityWindow | null;
}

/** Looked at within this share of the design's own density, either side. */
const REACH_SHARE = 0.3;
/** Finer than a billet is weighed and measured to. */
const STEP_KG_M3 = 5;
/** Less metal than this is left out. */
const NEGLIGIBLE_G = 0.5;

interface Wanted {
	readonly massG: number;
	readonly balanceFromButtMm: number;
}

/** The woods of a cue in the order they are picked: shaft, butt, decoration in glue order. */
export function billetPicks({
	design,
	wanted,
	metal,
}: {
	/** With or without its metal: it is loaded anew. */
	design: CueDesign;
	wanted: Wanted;
	metal: MetalId;
}): readonly BilletPick[] {
	const bare = { ...design, addedWeight: [], plugs: [] };
	const job = jobFor(bare, metal);
	const { shaftWood, buttWood, splice } = design;
	const pick = (wood: WoodId, use: BilletPick["use"]): BilletPick => ({
		wood,
		use,
		densityKgM3: densityKgM3(bare, wood),
		window: use === "decoration" ? null : densityWindow(job, wood, wanted),
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

/** Bisection from the design's own density to either side; what is between two that do is taken to do. */
function densityWindow(job: Job, wood: WoodId, wanted: Wanted): DensityWindow {
	const own = densityKgM3(job.design, wood).value;
	const edge = (limit: number): number | null => {
		if (isReached(withDensity(job, wood, limit), wanted)) return null;
		let [reached, missed] = [own, limit];
		while (Math.abs(reached - missed) > STEP_KG_M3) {
			const middle = (reached + missed) / 2;
			if (isReached(withDensity(job, wood, middle), wanted)) reached = middle;
			else missed = middle;
		}
		return reached;
	};
	return {
		lowKgM3: edge(own * (1 - REACH_SHARE)),
		highKgM3: edge(own * (1 + REACH_SHARE)),
	};
}

/** The same cue of another billet: its shape, and so what is integrated over it, stays. */
function withDensity(job: Job, wood: WoodId, kgM3: number): Job {
	const design = {
		...job.design,
		densities: { ...job.design.densities, [wood]: { kgM3, sd: 0 } },
	};
	return { ...job, design, natural: massFrom(design, job.naturalParts) };
}

/** Whether metal in the widest bore, or part of it behind the joint, gives weight and balance within tolerance. */
function isReached(job: Job, wanted: Wanted): boolean {
	const { massG: tolerance, balanceMm } = FINISHED_TOLERANCE;
	const naturalG = job.natural.massG.value;
	if (naturalG > wanted.massG + tolerance) return false;
	const [low, high] = [
		wanted.balanceFromButtMm - balanceMm,
		wanted.balanceFromButtMm + balanceMm,
	];
	const naturalMm = job.natural.balanceFromButtMm.value;
	if (
		naturalG >= wanted.massG - tolerance &&
		naturalMm >= low &&
		naturalMm <= high
	)
		return true;
	return [
		wanted.massG,
		wanted.massG - tolerance,
		wanted.massG + tolerance,
	].some((massG) => {
		const netG = massG - naturalG;
		if (netG < NEGLIGIBLE_G) return false;
		// The balance moves without a jump along a family, from one end to the other.
		return familiesFor(job, netG, "widest").some((family) => {
			const ends = [family.at(0), family.at(1)].flatMap((loaded) =>
				loaded ? [loaded.mass.balanceFromButtMm.value] : [],
			);
			return (
				ends.length > 0 && Math.min(...ends) <= high && Math.max(...ends) >= low
			);
		});
	});
}
