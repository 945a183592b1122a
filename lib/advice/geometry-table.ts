import type { CueDesign, MaterialId } from "@/lib/cue/design";
import { cutOffsetMm, shellsAt } from "@/lib/cue/layers";
import { bendingModulusGPa, densityKgM3 } from "@/lib/cue/materials";
import { panelsOf } from "@/lib/cue/panels";
import { outlineRadiusMm } from "@/lib/cue/taper";
import { woodKernel } from "@/lib/cue/wood-kernel";
import { gaussLegendre } from "@/lib/numerics/quadrature";
import { type BoreTable, boreTablesOf } from "./bore-table";

/** Integrals about the butt end, x measured from it. Of a wood: volume, ∫x dV, ∫x² dV, ∫r² dV in mm. */
export interface AboutButt {
	zeroth: number;
	first: number;
	second: number;
	polar: number;
}

/** Four numbers a section: weight times z² (mm³), polar moment of shaft and butt wood (mm⁴), E·polar of metal (N mm²). */
export type GiveSections = readonly number[];

/**
 * What the shape of a cue decides, whatever its two woods: integrals of each wood, linear in its
 * density; leather and metal already as mass (g, g·mm, g·mm²); and the sections that give the tip's
 * sideways give, up to the hand.
 */
export interface GeometryTable {
	readonly lengthMm: number;
	readonly shaft: Readonly<AboutButt>;
	readonly butt: Readonly<AboutButt>;
	readonly fixed: Readonly<AboutButt>;
	/** Where the give is clamped, from the tip. */
	readonly clampStationMm: number;
	/** Sections up to the clamp; a joint's stand in a list of their own, so that the shape's are shared. */
	readonly give: readonly GiveSections[];
	readonly bores: readonly BoreTable[];
	/** Least distance of a glued flat from the axis at the butt end; Infinity without flats. */
	readonly coreHalfWidthMm: number;
}

const zero = (): AboutButt => ({ zeroth: 0, first: 0, second: 0, polar: 0 });

export function addAt(
	sums: AboutButt,
	x: number,
	p: { amount: number; polar: number },
): void {
	sums.zeroth += p.amount;
	sums.first += p.amount * x;
	sums.second += p.amount * x * x;
	sums.polar += p.polar;
}

/** One section while it is being summed: areas and polar moments of the two woods. */
export class WoodSection {
	readonly areas = [0, 0];
	readonly polars = [0, 0];

	clear(): void {
		this.areas[0] = 0;
		this.areas[1] = 0;
		this.polars[0] = 0;
		this.polars[1] = 0;
	}

	readonly add = (slot: number, area: number, polar: number): void => {
		this.areas[slot] = (this.areas[slot] as number) + area;
		this.polars[slot] = (this.polars[slot] as number) + polar;
	};

	readonly subtract = (slot: number, area: number, polar: number): void =>
		this.add(slot, -area, -polar);
}

/** Numbers a wood for the kernel; throws on a third wood, which the table has no place for. */
export function slotOfWood(design: CueDesign) {
	return (_part: string, material: MaterialId): number => {
		if (material === design.shaftWood) return 0;
		if (material === design.buttWood) return 1;
		throw new RangeError(`a geometry table has no place for ${material}`);
	};
}

/**
 * Tabulates a design without joints, metal or plugs and with two different woods. Joints are put in
 * by `withJoint`. The same sections and panels as `integrate`, so both agree to the quadrature.
 */
export function geometryTable(p: {
	design: CueDesign;
	clampStationMm: number;
}): GeometryTable {
	const { design, clampStationMm } = p;
	const { lengthMm } = design;
	const section = new WoodSection();
	const wood = woodKernel(design, slotOfWood(design));
	const shaft = zero();
	const butt = zero();
	const fixed = zero();
	const give: number[] = [];
	for (const panel of splitAt(panelsOf(design), clampStationMm)) {
		const middleMm = (panel.fromMm + panel.toMm) / 2;
		const shells = shellsAt(design, middleMm);
		const ahead = panel.toMm <= clampStationMm + 1e-9;
		const count = pointCount(panel);
		const { nodes, weights } = gaussLegendre(count);
		const span = panel.toMm - panel.fromMm;
		for (let i = 0; i < count; i++) {
			const s = ((nodes[i] as number) + 1) / 2;
			let stationMm = panel.fromMm + span * s;
			let weightMm = (span * (weights[i] as number)) / 2;
			if (panel.map === "root") {
				stationMm = panel.fromMm + span * s * s;
				weightMm *= 2 * s;
			} else if (panel.map === "edge") {
				const angle = (s * Math.PI) / 2;
				stationMm = panel.fromMm + span * Math.sin(angle);
				weightMm *= (Math.PI / 2) * Math.cos(angle);
			}
			const surfaceMm = outlineRadiusMm(design, stationMm);
			const x = lengthMm - stationMm;
			section.clear();
			let metal = 0;
			for (const shell of shells) {
				const outer = Math.min(shell.outerRadiusMm, surfaceMm);
				const inner = shell.innerRadiusMm;
				if (shell.sleeve === null) {
					wood(stationMm, outer, section.add);
					if (inner > 0) wood(stationMm, inner, section.subtract);
					continue;
				}
				const { material } = shell.sleeve;
				const o2 = outer * outer;
				const i2 = inner * inner;
				const polar = (Math.PI / 2) * (o2 * o2 - i2 * i2);
				const gPerMm3 = densityKgM3(design, material).value * 1e-6;
				addAt(fixed, x, {
					amount: weightMm * Math.PI * (o2 - i2) * gPerMm3,
					polar: weightMm * polar * gPerMm3,
				});
				metal += polar * bendingModulusGPa(material).value * 1e3;
			}
			const { areas, polars } = section;
			addAt(shaft, x, {
				amount: weightMm * (areas[0] as number),
				polar: weightMm * (polars[0] as number),
			});
			addAt(butt, x, {
				amount: weightMm * (areas[1] as number),
				polar: weightMm * (polars[1] as number),
			});
			// The tip's leather gives by itself; beam theory has the bending begin behind it.
			if (!ahead || stationMm < design.tip.heightMm) continue;
			give.push(
				weightMm * stationMm * stationMm,
				polars[0] as number,
				polars[1] as number,
				metal,
			);
		}
	}
	return {
		lengthMm,
		shaft,
		butt,
		fixed,
		clampStationMm,
		give: [give],
		bores: boreTablesOf(design, wood, section),
		coreHalfWidthMm: Math.min(
			Number.POSITIVE_INFINITY,
			...design.splice.cuts.map((cut) =>
				cutOffsetMm({ design, cut, stationMm: lengthMm }),
			),
		),
	};
}

interface Stretch {
	readonly fromMm: number;
	readonly toMm: number;
	readonly map: "plain" | "root" | "edge";
}

/** Panels with a further end at a station; the second half of a split one no longer starts at its flat. */
function splitAt(
	panels: readonly Stretch[],
	stationMm: number,
): readonly Stretch[] {
	return panels.flatMap((panel): readonly Stretch[] =>
		panel.map !== "edge" &&
		panel.fromMm < stationMm - 1e-6 &&
		panel.toMm > stationMm + 1e-6
			? [
					{ ...panel, toMm: stationMm },
					{ fromMm: stationMm, toMm: panel.toMm, map: "plain" },
				]
			: [panel],
	);
}

/** As in `integrate`: polynomials of the taper, arcs of the flats. */
function pointCount({ fromMm, toMm, map }: Stretch): number {
	if (map === "edge") return 8;
	if (toMm - fromMm < 5) return 3;
	if (toMm - fromMm < 40) return 5;
	return map === "root" ? 10 : 8;
}

/** Sideways give of the tip, mm/N, clamped at the table's station: ∫ z²/EI dz, EI = Σ E·polar/2. */
export function tipGiveMmPerN(
	table: GeometryTable,
	moduli: { readonly shaftGPa: number; readonly buttGPa: number },
): number {
	const es = moduli.shaftGPa * 1e3;
	const eb = moduli.buttGPa * 1e3;
	let sum = 0;
	for (const sections of table.give)
		for (let i = 0; i < sections.length; i += 4)
			sum +=
				(sections[i] as number) /
				(es * (sections[i + 1] as number) +
					eb * (sections[i + 2] as number) +
					(sections[i + 3] as number));
	return 2 * sum;
}
