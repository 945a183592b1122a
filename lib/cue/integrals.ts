import { cubicAt } from "@/lib/numerics/interpolation";
import { gaussLegendre } from "@/lib/numerics/quadrature";
import type { CueDesign, MaterialId } from "./design";
import { shellsAt } from "./layers";
import { cylinderPanels, type Panel, panelsOf } from "./panels";
import { outlineRadiusMm, taperCurve } from "./taper";
import { woodKernel } from "./wood-kernel";

/** What one part contributes, per unit of density. Stations in mm from the tip. */
export interface PartIntegrals {
	readonly part: string;
	readonly material: MaterialId;
	readonly volumeMm3: number;
	/** ∫ z dV */
	readonly firstMm4: number;
	/** ∫ z² dV */
	readonly secondMm5: number;
	/** ∫ r² dV about the long axis */
	readonly polarMm5: number;
}

/** Sums per part and material; `slotOf` numbers them, `add` collects at the station set by `at`. */
class PartSums {
	private readonly names: { part: string; material: MaterialId }[] = [];
	private readonly sums: number[] = [];
	private stationMm = 0;
	private weightMm = 0;

	readonly slotOf = (part: string, material: MaterialId): number => {
		for (let i = 0; i < this.names.length; i++) {
			const name = this.names[i];
			if (name?.part === part && name.material === material) return i;
		}
		this.sums.push(0, 0, 0, 0);
		return this.names.push({ part, material }) - 1;
	};

	at(stationMm: number, weightMm: number): void {
		this.stationMm = stationMm;
		this.weightMm = weightMm;
	}

	readonly add = (slot: number, areaMm2: number, polarMm4: number): void => {
		const i = 4 * slot;
		const { sums, stationMm, weightMm } = this;
		const volume = weightMm * areaMm2;
		const first = volume * stationMm;
		sums[i] = (sums[i] ?? 0) + volume;
		sums[i + 1] = (sums[i + 1] ?? 0) + first;
		sums[i + 2] = (sums[i + 2] ?? 0) + first * stationMm;
		sums[i + 3] = (sums[i + 3] ?? 0) + weightMm * polarMm4;
	};

	readonly subtract = (slot: number, areaMm2: number, polarMm4: number): void =>
		this.add(slot, -areaMm2, -polarMm4);

	clear(): void {
		this.sums.fill(0);
	}

	list(): readonly PartIntegrals[] {
		const parts: PartIntegrals[] = [];
		this.names.forEach(({ part, material }, slot) => {
			const volumeMm3 = this.sums[4 * slot] ?? 0;
			if (volumeMm3 === 0) return;
			parts.push({
				part,
				material,
				volumeMm3,
				firstMm4: this.sums[4 * slot + 1] ?? 0,
				secondMm5: this.sums[4 * slot + 2] ?? 0,
				polarMm5: this.sums[4 * slot + 3] ?? 0,
			});
		});
		return parts;
	}
}

/** A ring of a panel: its slot in the sums, or wood where that is negative. */
interface PanelShell {
	readonly inner: number;
	readonly outer: number;
	readonly slot: number;
}

/** Integrals of every part of a design, by Gauss–Legendre on panels split at every break. */
export function integrate(design: CueDesign): readonly PartIntegrals[] {
	const sums = new PartSums();
	const wood = woodKernel(design, sums.slotOf);
	const taper = taperCurve(design.taper);
	const addShells = (
		shells: readonly PanelShell[],
		stationMm: number,
		surfaceMm: number,
	) => {
		for (const { inner, outer: limit, slot } of shells) {
			const outer = Math.min(limit, surfaceMm);
			if (slot < 0) {
				wood(stationMm, outer, sums.add);
				if (inner > 0) wood(stationMm, inner, sums.subtract);
				continue;
			}
			const outer2 = outer * outer;
			const inner2 = inner * inner;
			sums.add(
				slot,
				Math.PI * (outer2 - inner2),
				(Math.PI / 2) * (outer2 * outer2 - inner2 * inner2),
			);
		}
	};
	const points = new PanelPoints();
	for (const panel of panelsOf(design)) {
		const middleMm = (panel.fromMm + panel.toMm) / 2;
		const shells = shellsAt(design, middleMm).map((shell) => ({
			inner: shell.innerRadiusMm,
			outer: shell.outerRadiusMm,
			slot: shell.sleeve
				? sums.slotOf(shell.sleeve.part, shell.sleeve.material)
				: -1,
		}));
		const cubic = taper.pieceAt(middleMm);
		const rounded = panel.map === "edge" || panel.fromMm < design.tip.heightMm;
		points.place(panel);
		for (let i = 0; i < points.count; i++) {
			const stationMm = points.stationMm(i);
			sums.at(stationMm, points.weightMm(i));
			const surfaceMm = rounded
				? outlineRadiusMm(design, stationMm)
				: cubicAt(cubic, stationMm) / 2;
			addShells(shells, stationMm, surfaceMm);
		}
	}
	return sums.list();
}

/**
 * The wood inside a coaxial cylinder, as a bore would take it out, between any two stations of a
 * range. Wood only: the caller keeps the cylinder clear of leather and metal.
 */
export function cylinderProbe(
	design: CueDesign,
	range: { fromMm: number; toMm: number; radiusMm: number },
): (fromMm: number, toMm: number) => readonly PartIntegrals[] {
	const panels = cylinderPanels(design, range);
	const sums = new PartSums();
	const wood = woodKernel(design, sums.slotOf);
	const points = new PanelPoints();
	return (fromMm, toMm) => {
		sums.clear();
		for (const panel of panels) {
			const from = Math.max(fromMm, panel.fromMm);
			const to = Math.min(toMm, panel.toMm);
			if (from >= to) continue;
			points.place({ fromMm: from, toMm: to, map: panel.map });
			for (let i = 0; i < points.count; i++) {
				sums.at(points.stationMm(i), points.weightMm(i));
				wood(points.stationMm(i), range.radiusMm, sums.add);
			}
		}
		return sums.list();
	};
}

/** Integrals of a solid cylinder on the axis. */
export function cylinderIntegrals(p: {
	part: string;
	material: MaterialId;
	fromMm: number;
	toMm: number;
	radiusMm: number;
}): PartIntegrals {
	const span = p.toMm - p.fromMm;
	const middle = (p.toMm + p.fromMm) / 2;
	const volume = Math.PI * p.radiusMm * p.radiusMm * span;
	return {
		part: p.part,
		material: p.material,
		volumeMm3: volume,
		firstMm4: volume * middle,
		secondMm5: volume * (middle * middle + (span * span) / 12),
		polarMm5: (volume * p.radiusMm * p.radiusMm) / 2,
	};
}

/** Sums lists of integrals part by part, each list times its factor. */
export function sumParts(
	terms: readonly { parts: readonly PartIntegrals[]; factor: number }[],
): readonly PartIntegrals[] {
	const totals: { -readonly [K in keyof PartIntegrals]: PartIntegrals[K] }[] =
		[];
	for (const { parts, factor } of terms)
		for (const part of parts) {
			let total = totals.find(
				(one) => one.part === part.part && one.material === part.material,
			);
			if (!total) {
				total = {
					part: part.part,
					material: part.material,
					volumeMm3: 0,
					firstMm4: 0,
					secondMm5: 0,
					polarMm5: 0,
				};
				totals.push(total);
			}
			total.volumeMm3 += factor * part.volumeMm3;
			total.firstMm4 += factor * part.firstMm4;
			total.secondMm5 += factor * part.secondMm5;
			total.polarMm5 += factor * part.polarMm5;
		}
	return totals;
}

/**
 * Points a panel. The taper's polynomials need 7 at most; the flats' arcs need 10 for 1e-9 of the
 * mass on a long panel; short panels are nearly straight.
 */
function pointCount(panel: Panel): number {
	const span = panel.toMm - panel.fromMm;
	if (panel.map === "edge") return 8;
	if (span < 5) return 3;
	if (span < 40) return 5;
	return panel.map === "root" ? 10 : 8;
}

/** Gauss points of one panel at a time, mapped as the panel asks. */
class PanelPoints {
	count = 0;
	private readonly stations = new Float64Array(16);
	private readonly weights = new Float64Array(16);

	stationMm(i: number): number {
		return this.stations[i] ?? Number.NaN;
	}

	weightMm(i: number): number {
		return this.weights[i] ?? Number.NaN;
	}

	place(panel: Panel): void {
		this.count = pointCount(panel);
		const { nodes, weights } = gaussLegendre(this.count);
		const { fromMm } = panel;
		const span = panel.toMm - fromMm;
		for (let i = 0; i < this.count; i++) {
			const s = ((nodes[i] ?? 0) + 1) / 2;
			const w = (weights[i] ?? 0) / 2;
			if (panel.map === "root") {
				this.stations[i] = fromMm + span * s * s;
				this.weights[i] = 2 * span * s * w;
			} else if (panel.map === "edge") {
				const angle = (s * Math.PI) / 2;
				this.stations[i] = fromMm + span * Math.sin(angle);
				this.weights[i] = ((span * Math.PI) / 2) * Math.cos(angle) * w;
			} else {
				this.stations[i] = fromMm + span * s;
				this.weights[i] = span * w;
			}
		}
	}
}
