import type { CueDesign, MaterialId } from "@/lib/cue/design";
import { shellsAt } from "@/lib/cue/layers";
import { bendingModulusGPa, densityKgM3 } from "@/lib/cue/materials";
import type { BendingSection } from "@/lib/cue/section";
import { outlineRadiusMm } from "@/lib/cue/taper";
import { woodKernel } from "@/lib/cue/wood-kernel";
import { type BeamProfile, breaksOf, tipSectionOf } from "./profile";

/** Area and polar moment to mass per length and mean stiffness, one material. */
interface Weights {
	/** kg/m for each mm² */
	readonly mass: number;
	/** Nm² for each mm⁴ of polar moment: half, as the two planes share it. */
	readonly stiffness: number;
}

/** A ring of the section between two breaks; `weights` null where it is wood. */
interface Ring {
	readonly innerMm: number;
	readonly outerMm: number;
	readonly weights: Weights | null;
}

/**
 * The cue as a bar that bends alike in both planes, each plane having the mean of the two stiffnesses:
 * the same figures as `beamProfileOf` for a round or four-sided splice, and many times quicker. The
 * stiffness is about the long axis, which a one-sided splice's own centre misses by little.
 */
export function meanBeamProfileOf(design: CueDesign): BeamProfile {
	const breaksMm = breaksOf(design);
	const known = new Map<MaterialId, Weights>();
	const weightsOf = (material: MaterialId): Weights => {
		const before = known.get(material);
		if (before) return before;
		const weights = {
			mass: densityKgM3(design, material).value * 1e-6,
			stiffness: (bendingModulusGPa(material).value * 1e9 * 1e-12) / 2,
		};
		known.set(material, weights);
		return weights;
	};
	const wood: Weights[] = [];
	const kernel = woodKernel(design, (_part, material) => {
		wood.push(weightsOf(material));
		return wood.length - 1;
	});
	let mass = 0;
	let stiffness = 0;
	let sign = 1;
	const sink = (slot: number, areaMm2: number, polarMm4: number): void => {
		const weights = wood[slot] as Weights;
		mass += sign * weights.mass * areaMm2;
		stiffness += sign * weights.stiffness * polarMm4;
	};
	let from = 0;
	let to = -1;
	let rings: readonly Ring[] = [];
	const sectionAt = (stationMm: number): BendingSection => {
		if (stationMm < from || stationMm >= to) {
			const next = breaksMm.findIndex((end) => end > stationMm);
			const end = next < 0 ? breaksMm.length - 1 : next;
			from = breaksMm[end - 1] as number;
			to = breaksMm[end] as number;
			rings = shellsAt(design, (from + to) / 2).map((shell) => ({
				innerMm: shell.innerRadiusMm,
				outerMm: shell.outerRadiusMm,
				weights: shell.sleeve ? weightsOf(shell.sleeve.material) : null,
			}));
		}
		const surfaceMm = outlineRadiusMm(design, stationMm);
		mass = 0;
		stiffness = 0;
		for (const { innerMm, outerMm, weights } of rings) {
			const outer = Math.min(outerMm, surfaceMm);
			if (weights === null) {
				sign = 1;
				kernel(stationMm, outer, sink);
				if (innerMm > 0) {
					sign = -1;
					kernel(stationMm, innerMm, sink);
				}
				continue;
			}
			const outer2 = outer * outer;
			const inner2 = innerMm * innerMm;
			mass += weights.mass * Math.PI * (outer2 - inner2);
			stiffness +=
				weights.stiffness * (Math.PI / 2) * (outer2 * outer2 - inner2 * inner2);
		}
		return {
			massPerLengthKgM: mass,
			stiffnessXNm2: stiffness,
			stiffnessYNm2: stiffness,
		};
	};
	const tip = tipSectionOf(design, (_design, stationMm) =>
		sectionAt(stationMm),
	);
	return {
		lengthMm: design.lengthMm,
		breaksMm,
		sectionAt: (stationMm) =>
			stationMm < design.tip.heightMm ? tip : sectionAt(stationMm),
	};
}
