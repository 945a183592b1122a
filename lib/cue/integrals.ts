import { gaussLegendre } from "@/lib/numerics/quadrature";
import type { CueDesign, MaterialId } from "./design";
import { shellsAt } from "./layers";
import { cylinderPanels, type Panel, panelsOf } from "./panels";
import { outlineRadiusMm } from "./taper";
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

/** Sums per part and material; `at` numbers them, `add` collects at one station. */
class PartSums {
	private readonly names: { part: string; material: MaterialId }[] = [];
	private readonly sums: number[] = [];
	private stationMm = 0;
	private weightMm = 0;

	readonly slotOf = (part: string, material: MaterialId): number => {
		const known = this.names.findIndex(
			(name) => name.part === part && name.material === material,
		);
		if (known >= 0) return known;
		this.names.push({ part, material });
		this.sums.push(0, 0, 0, 0);
		return this.names.length - 1;
	};

	at(stationMm: number, weightMm: number): void {
		this.stationMm = stationMm;
		this.weightMm = weightMm;
	}

	readonly add = (slot: number, areaMm2: number, polarMm4: number): void => {
		const i = 4 * slot;
		const volume = this.weightMm * areaMm2;
		const first = volume * this.stationMm;
		this.sums[i] = (this.sums[i] ?? 0) + volume;
		this.sums[i + 1] = (this.sums[i + 1] ?? 0) + first;
		this.sums[i + 2] = (this.sums[i + 2] ?? 0) + first * this.stationMm;
		this.sums[i + 3] = (this.sums[i + 3] ?? 0) + this.weightMm * polarMm4;
	};

	readonly subtract = (slot: number, areaMm2: number, polarMm4: number): void =>
		this.add(slot, -areaMm2, -polarMm4);

	list(): readonly PartIntegrals[] {
		return this.names
			.map((name, slot) => ({
				...name,
				volumeMm3: this.sums[4 * slot] ?? 0,
				firstMm4: this.sums[4 * slot + 1] ?? 0,
				secondMm5: this.sums[4 * slot + 2] ?? 0,
				polarMm5: this.sums[4 * slot + 3] ?? 0,
			}))
			.filter((part) => part.volumeMm3 !== 0);
	}
}

/** Integrals of every part of a design, by Gauss–Legendre on panels split at every break. */
export function integrate(design: CueDesign): readonly PartIntegrals[] {
	const sums = new PartSums();
	const wood = woodKernel(design, sums.slotOf);
	for (const panel of panelsOf(design)) {
		const shells = shellsAt(design, (panel.fromMm + panel.toMm) / 2).map(
			(shell) => ({
				inner: shell.innerRadiusMm,
				outer: shell.outerRadiusMm,
				slot: shell.sleeve
					? sums.slotOf(shell.sleeve.part, shell.sleeve.material)
					: -1,
			}),
		);
		eachPoint(panel, (stationMm, weightMm) => {
			sums.at(stationMm, weightMm);
			const surfaceMm = outlineRadiusMm(design, stationMm);
			for (const shell of shells) {
				const outer = Math.min(shell.outer, surfaceMm);
				const { inner, slot } = shell;
				if (slot >= 0)
					sums.add(
						slot,
						Math.PI * (outer * outer - inner * inner),
						(Math.PI / 2) * (outer ** 4 - inner ** 4),
					);
				else {
					wood(stationMm, outer, sums.add);
					if (inner > 0) wood(stationMm, inner, sums.subtract);
				}
			}
		});
	}
	return sums.list();
}

/**
 * The wood inside a coaxial cylinder, as a bore would take it out. Wood only: the caller keeps the
 * cylinder clear of leather and metal.
 */
export function woodInCylinder(
	design: CueDesign,
	cylinder: { fromMm: number; toMm: number; radiusMm: number },
): readonly PartIntegrals[] {
	const sums = new PartSums();
	const wood = woodKernel(design, sums.slotOf);
	for (const panel of cylinderPanels(design, cylinder))
		eachPoint(panel, (stationMm, weightMm) => {
			sums.at(stationMm, weightMm);
			wood(stationMm, cylinder.radiusMm, sums.add);
		});
	return sums.list();
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

/** Visits the stations of a panel with their weights in mm. */
export function eachPoint(
	panel: Panel,
	visit: (stationMm: number, weightMm: number) => void,
): void {
	const count = pointCount(panel);
	const { nodes, weights } = gaussLegendre(count);
	const { fromMm } = panel;
	const span = panel.toMm - fromMm;
	for (let i = 0; i < count; i++) {
		const s = ((nodes[i] ?? 0) + 1) / 2;
		const w = (weights[i] ?? 0) / 2;
		if (panel.map === "root") visit(fromMm + span * s * s, 2 * span * s * w);
		else if (panel.map === "edge") {
			const angle = (s * Math.PI) / 2;
			visit(
				fromMm + span * Math.sin(angle),
				((span * Math.PI) / 2) * Math.cos(angle) * w,
			);
		} else visit(fromMm + span * s, span * w);
	}
}
