import type { CitationId } from "@/lib/reference/citations";
import type { Estimate, Standing } from "@/lib/reference/estimate";
import type { CueDesign, MaterialId } from "./design";
import { integrate, type PartIntegrals } from "./integrals";
import { densityKgM3, isWood } from "./materials";

export interface MassPart {
	readonly part: string;
	readonly material: MaterialId;
	readonly massG: Estimate;
	readonly centroidStationMm: number;
}

/** One material's share of the whole: its density and its integrals over all parts. */
export interface MaterialIntegrals extends Omit<PartIntegrals, "part"> {
	readonly densityKgM3: Estimate;
}

export interface CueMass {
	readonly massG: Estimate;
	readonly balanceFromButtMm: Estimate;
	readonly balanceStationMm: Estimate;
	/** About a crosswise axis through the balance point, mean of all crosswise directions. */
	readonly inertiaAboutBalanceKgM2: Estimate;
	/** About the long axis. */
	readonly inertiaAboutAxisKgM2: Estimate;
	readonly parts: readonly MassPart[];
	readonly materials: readonly MaterialIntegrals[];
}

const MM3_KGM3_TO_G = 1e-6;
const MM5_KGM3_TO_KGM2 = 1e-15;

/**
 * Mass, balance and inertia of a design, added weight included. Spread: each material's density
 * spread carried through the exact derivatives, materials independent of each other.
 */
export function weighCue(design: CueDesign): CueMass {
	return massFrom(design, integrate(design));
}

/** As `weighCue`, from integrals already made of the design or of a change to it. */
export function massFrom(
	design: CueDesign,
	parts: readonly PartIntegrals[],
): CueMass {
	const materials = byMaterial(design, parts);
	const rest = provenanceOf(materials);
	const estimate = (
		value: number,
		slope: (one: MaterialIntegrals) => number,
	): Estimate => ({
		value,
		sd: Math.sqrt(
			materials.reduce((sum, one) => {
				const share = slope(one) * one.densityKgM3.sd;
				return sum + share * share;
			}, 0),
		),
		...rest,
	});
	const sum = (of: (one: MaterialIntegrals) => number) =>
		materials.reduce((all, one) => all + one.densityKgM3.value * of(one), 0);
	const massSum = sum((one) => one.volumeMm3);
	const stationMm = sum((one) => one.firstMm4) / massSum;
	const balanceSlope = (one: MaterialIntegrals) =>
		(one.firstMm4 - stationMm * one.volumeMm3) / massSum;
	return {
		massG: estimate(
			massSum * MM3_KGM3_TO_G,
			(one) => one.volumeMm3 * MM3_KGM3_TO_G,
		),
		balanceStationMm: estimate(stationMm, balanceSlope),
		balanceFromButtMm: estimate(design.lengthMm - stationMm, balanceSlope),
		inertiaAboutBalanceKgM2: inertiaFrom(materials, stationMm, rest),
		inertiaAboutAxisKgM2: estimate(
			sum((one) => one.polarMm5) * MM5_KGM3_TO_KGM2,
			(one) => one.polarMm5 * MM5_KGM3_TO_KGM2,
		),
		parts: parts
			.map((part) => massPart(design, part))
			.sort((a, b) => a.centroidStationMm - b.centroidStationMm),
		materials,
	};
}

/** Moment of inertia about a crosswise axis at a station, e.g. the middle of the grip hand. */
export function inertiaAboutStationKgM2(
	mass: CueMass,
	stationMm: number,
): Estimate {
	return inertiaFrom(mass.materials, stationMm, provenanceOf(mass.materials));
}

/** About the balance point too: there the derivative through the moving axis vanishes. */
function inertiaFrom(
	materials: readonly MaterialIntegrals[],
	stationMm: number,
	rest: Provenance,
): Estimate {
	let value = 0;
	let variance = 0;
	for (const one of materials) {
		const perDensity =
			(one.secondMm5 -
				2 * stationMm * one.firstMm4 +
				stationMm * stationMm * one.volumeMm3 +
				one.polarMm5 / 2) *
			MM5_KGM3_TO_KGM2;
		value += one.densityKgM3.value * perDensity;
		variance += (one.densityKgM3.sd * perDensity) ** 2;
	}
	return { value, sd: Math.sqrt(variance), ...rest };
}

type Provenance = Pick<Estimate, "standing" | "sources">;

function provenanceOf(materials: readonly MaterialIntegrals[]): Provenance {
	const sources: CitationId[] = [];
	for (const { densityKgM3: density } of materials)
		for (const source of density.sources)
			if (!sources.includes(source)) sources.push(source);
	return { standing: standingOf(materials), sources };
}

function byMaterial(
	design: CueDesign,
	parts: readonly PartIntegrals[],
): readonly MaterialIntegrals[] {
	const found: {
		-readonly [K in keyof MaterialIntegrals]: MaterialIntegrals[K];
	}[] = [];
	for (const part of parts) {
		const before = found.find((one) => one.material === part.material);
		if (before) {
			before.volumeMm3 += part.volumeMm3;
			before.firstMm4 += part.firstMm4;
			before.secondMm5 += part.secondMm5;
			before.polarMm5 += part.polarMm5;
		} else
			found.push({
				material: part.material,
				densityKgM3: densityKgM3(design, part.material),
				volumeMm3: part.volumeMm3,
				firstMm4: part.firstMm4,
				secondMm5: part.secondMm5,
				polarMm5: part.polarMm5,
			});
	}
	return found;
}

function massPart(design: CueDesign, part: PartIntegrals): MassPart {
	const density = densityKgM3(design, part.material);
	const perDensity = part.volumeMm3 * MM3_KGM3_TO_G;
	return {
		part: part.part,
		material: part.material,
		massG: {
			...density,
			value: density.value * perDensity,
			sd: density.sd * perDensity,
		},
		centroidStationMm: part.firstMm4 / part.volumeMm3,
	};
}

/** Measured only when every wood in it was weighed; otherwise computed from published densities. */
function standingOf(materials: readonly MaterialIntegrals[]): Standing {
	return materials.every(
		(one) => !isWood(one.material) || one.densityKgM3.standing === "measured",
	)
		? "measured"
		: "derived";
}
