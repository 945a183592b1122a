import { BORE, deepestBoreMm } from "@/lib/build/bore";
import type { CueDesign } from "@/lib/cue/design";
import type { WoodSink } from "@/lib/cue/wood-kernel";

/** Steps of the cumulative sums along a bore. */
const STEP_MM = 20;

/** A section summed by wood: index 0 the shaft's, 1 the butt's. */
interface Section {
	readonly areas: readonly number[];
	clear(): void;
	readonly add: WoodSink;
}

/**
 * The shaft wood a drill takes out of the butt as it goes in: volume, ∫x dV and ∫x² dV from the butt
 * end to a depth x. The rest of the bore is butt wood. Cumulative Simpson sums, cubic between.
 */
export class BoreTable {
	constructor(
		readonly diameterMm: number,
		readonly depthMm: number,
		private readonly areas: Float64Array,
		private readonly sums: readonly [Float64Array, Float64Array, Float64Array],
	) {}

	/** The same bore where something else ends it sooner; none where no plug would fit. */
	within(behindJointMm: number): readonly BoreTable[] {
		const limitMm = Math.min(
			this.depthMm,
			Math.max(0, behindJointMm - BORE.clearanceMm),
		);
		if (limitMm <= BORE.minPlugMm) return [];
		return [new BoreTable(this.diameterMm, limitMm, this.areas, this.sums)];
	}

	/** ∫₀^depth x^power dV of shaft wood; power 0, 1 or 2. */
	shaftMoment(power: 0 | 1 | 2, depthMm: number): number {
		const sums = this.sums[power];
		let k = Math.floor(depthMm / STEP_MM);
		const last = sums.length - 2;
		if (k > last) k = last;
		const x0 = k * STEP_MM;
		const x1 = x0 + STEP_MM;
		const t = (depthMm - x0) / STEP_MM;
		let slope0 = this.areas[k] as number;
		let slope1 = this.areas[k + 1] as number;
		if (power === 1) {
			slope0 *= x0;
			slope1 *= x1;
		} else if (power === 2) {
			slope0 *= x0 * x0;
			slope1 *= x1 * x1;
		}
		const from = sums[k] as number;
		const rise = (sums[k + 1] as number) - from;
		const bend0 = STEP_MM * slope0 - rise;
		const bend1 = STEP_MM * slope1 - rise;
		return from + t * (rise + (1 - t) * (bend0 * (1 - t) - bend1 * t));
	}
}

/** A table for every drill that leaves a bore, slimmest first. */
export function boreTablesOf(
	design: CueDesign,
	wood: (stationMm: number, radiusMm: number, sink: WoodSink) => void,
	section: Section,
): readonly BoreTable[] {
	const { lengthMm } = design;
	return BORE.diametersMm.flatMap((diameterMm) => {
		const depthMm = deepestBoreMm(design, diameterMm);
		if (depthMm <= BORE.minPlugMm) return [];
		const radiusMm = diameterMm / 2;
		const shaftArea = (x: number): number => {
			section.clear();
			wood(lengthMm - x, radiusMm, section.add);
			return section.areas[0] as number;
		};
		const steps = Math.ceil(depthMm / STEP_MM - 1e-9);
		const areas = new Float64Array(steps + 1);
		const sums = [0, 1, 2].map(() => new Float64Array(steps + 1)) as [
			Float64Array,
			Float64Array,
			Float64Array,
		];
		areas[0] = shaftArea(0);
		for (let k = 0; k < steps; k++) {
			const x0 = k * STEP_MM;
			const middle = x0 + STEP_MM / 2;
			const x1 = x0 + STEP_MM;
			const a0 = areas[k] as number;
			const am = shaftArea(middle);
			const a1 = shaftArea(x1);
			areas[k + 1] = a1;
			const w = STEP_MM / 6;
			sums[0][k + 1] = (sums[0][k] as number) + w * (a0 + 4 * am + a1);
			sums[1][k + 1] =
				(sums[1][k] as number) + w * (a0 * x0 + 4 * am * middle + a1 * x1);
			sums[2][k + 1] =
				(sums[2][k] as number) +
				w * (a0 * x0 * x0 + 4 * am * middle * middle + a1 * x1 * x1);
		}
		return [new BoreTable(diameterMm, depthMm, areas, sums)];
	});
}
