import { gaussLegendre } from "@/lib/numerics/quadrature";
import type { CueDesign, MaterialId } from "./design";
import { type Panel, panelsOf } from "./panels";
import { regionsAt } from "./regions";

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

/** Points a panel: exact for the taper's polynomials, 1e-9 of the mass for the flats' arcs. */
const POINTS = 12;

/** Integrals of every part of a design, by Gauss–Legendre on panels split at every break. */
export function integrate(design: CueDesign): readonly PartIntegrals[] {
	const totals = new Map<
		string,
		{ -readonly [K in keyof PartIntegrals]: PartIntegrals[K] }
	>();
	for (const panel of panelsOf(design)) {
		for (const { stationMm, weightMm } of pointsOf(panel)) {
			for (const { part, material, moments } of regionsAt(design, stationMm)) {
				const key = `${part}|${material}`;
				let total = totals.get(key);
				if (!total) {
					total = {
						part,
						material,
						volumeMm3: 0,
						firstMm4: 0,
						secondMm5: 0,
						polarMm5: 0,
					};
					totals.set(key, total);
				}
				const volume = weightMm * moments.area;
				total.volumeMm3 += volume;
				total.firstMm4 += volume * stationMm;
				total.secondMm5 += volume * stationMm * stationMm;
				total.polarMm5 += weightMm * moments.polar;
			}
		}
	}
	return [...totals.values()].filter((total) => total.volumeMm3 !== 0);
}

function pointsOf(
	panel: Panel,
): readonly { stationMm: number; weightMm: number }[] {
	const { nodes, weights } = gaussLegendre(POINTS);
	const span = panel.toMm - panel.fromMm;
	const points = [];
	for (let i = 0; i < POINTS; i++) {
		const s = ((nodes[i] ?? 0) + 1) / 2;
		const w = (weights[i] ?? 0) / 2;
		if (panel.map === "root")
			points.push({
				stationMm: panel.fromMm + span * s * s,
				weightMm: 2 * span * s * w,
			});
		else if (panel.map === "edge") {
			const angle = (s * Math.PI) / 2;
			points.push({
				stationMm: panel.fromMm + span * Math.sin(angle),
				weightMm: ((span * Math.PI) / 2) * Math.cos(angle) * w,
			});
		} else
			points.push({
				stationMm: panel.fromMm + span * s,
				weightMm: span * w,
			});
	}
	return points;
}
