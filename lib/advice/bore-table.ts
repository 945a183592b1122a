import { BORE, deepestBoreMm } from "@/lib/build/bore";
import type { CueDesign } from "@/lib/cue/design";
import type { WoodSink } from "@/lib/cue/wood-kernel";

/** Steps of the cumulative sums along a bore. */
const STEP_MM = 30;

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
	/**
	 * `columns` holds four stretches of `rows`: the section's shaft wood, then the three sums, at every step.
	 */
	constructor(
		readonly diameterMm: number,
		readonly depthMm: number,
		private readonly columns: Float64Array,
		private readonly rows: number,
	) {}

	/** The same bore where something else ends it sooner; none where no plug would fit. */
	within(behindJointMm: number): readonly BoreTable[] {
		const limitMm = Math.min(
			this.depthMm,
			Math.max(0, behindJointMm - BORE.clearanceMm),
		);
		if (limitMm <= BORE.minPlugMm) return [];
		return [new BoreTable(this.diameterMm, limitMm, this.columns, this.rows)];
	}

	/** ∫₀^depth x^power dV of shaft wood; power 0, 1 or 2. */
	shaftMoment(power: 0 | 1 | 2, depthMm: number): number {
		const { columns, rows } = this;
		let k = Math.floor(depthMm / STEP_MM);
		if (k > rows - 2) k = rows - 2;
		const x0 = k * STEP_MM;
		const x1 = x0 + STEP_MM;
		const t = (depthMm - x0) / STEP_MM;
		let slope0 = columns[k] as number;
		let slope1 = columns[k + 1] as number;
		if (power === 1) {
			slope0 *= x0;
			slope1 *= x1;
		} else if (power === 2) {
			slope0 *= x0 * x0;
			slope1 *= x1 * x1;
		}
		const at = (power + 1) * rows + k;
		const from = columns[at] as number;
		const rise = (columns[at + 1] as number) - from;
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
		const rows = steps + 1;
		const columns = new Float64Array(4 * rows);
		let a0 = shaftArea(0);
		columns[0] = a0;
		let zeroth = 0;
		let first = 0;
		let second = 0;
		const w = STEP_MM / 6;
		for (let k = 1; k <= steps; k++) {
			const x1 = k * STEP_MM;
			const x0 = x1 - STEP_MM;
			const middle = x1 - STEP_MM / 2;
			const am = 4 * shaftArea(middle);
			const a1 = shaftArea(x1);
			zeroth += w * (a0 + am + a1);
			first += w * (a0 * x0 + am * middle + a1 * x1);
			second += w * (a0 * x0 * x0 + am * middle * middle + a1 * x1 * x1);
			columns[k] = a1;
			columns[rows + k] = zeroth;
			columns[2 * rows + k] = first;
			columns[3 * rows + k] = second;
			a0 = a1;
		}
		return [new BoreTable(diameterMm, depthMm, columns, rows)];
	});
}
