import type { CitationId } from "./citations";
import { sourced } from "./constant";
import type { SourcedConstant } from "./estimate";

export type WoodId =
	| "white-ash"
	| "european-ash"
	| "sugar-maple"
	| "hornbeam"
	| "indian-rosewood"
	| "cocobolo"
	| "african-blackwood"
	| "gaboon-ebony"
	| "macassar-ebony"
	| "ceylon-ebony"
	| "zebrano"
	| "olive"
	| "black-walnut"
	| "european-walnut"
	| "bubinga"
	| "african-padauk"
	| "burma-padauk"
	| "purpleheart"
	| "bocote"
	| "snakewood";

export type WoodUse = "shaft" | "butt" | "veneer";

export interface Protection {
	readonly appendix: "II";
	readonly note: string;
	/** Date of the listing text the note rests on, ISO. Listings change. */
	readonly dataDate: string;
	readonly source: CitationId;
}

export interface DustHazard {
	readonly sensitiser: boolean;
	readonly note: string;
	readonly source: CitationId;
}

export interface Wood {
	readonly id: WoodId;
	readonly name: string;
	readonly latin: string;
	/** Density at 12 % moisture content. */
	readonly density12KgM3: SourcedConstant;
	/** Bending modulus along the grain at 12 % as printed; null where no usable figure was found. */
	readonly modulusGPa: SourcedConstant | null;
	/** "centre": printed from centre-loaded beams of span/depth 14, so shear is in it (see section.ts). */
	readonly modulusLoading: "centre" | "unstated";
	/** Green to oven-dry shrinkage, %. */
	readonly shrinkRadialPct: number;
	readonly shrinkTangentialPct: number;
	/** Relative change of a dimension for one point of moisture content, 6–14 %. */
	readonly changeRadialPerPct: number;
	readonly changeTangentialPerPct: number;
	readonly changeStanding: "published" | "derived" | "assumed";
	readonly movementSource: CitationId;
	readonly uses: readonly WoodUse[];
	readonly protection: Protection | null;
	readonly dust: DustHazard | null;
}

/** Specific gravity varies by 10 % within a species where nothing better was found (ASTM D2555 row). */
const DEFAULT_DENSITY_COV = 0.1;
/** Modulus of elasticity varies by 22 % within a species (same row). */
const MODULUS_COV = 0.22;

const CITES_DATE = "2023-02-23";
const rosewoodListing: Protection = {
	appendix: "II",
	note: "Dalbergia, annotation #15: finished products up to 10 kg of the listed wood per shipment are exempt; blanks and unfinished splices are not",
	dataDate: CITES_DATE,
	source: "cites-appendices",
};

interface Row {
	name: string;
	latin: string;
	densityKgM3: number;
	densityCov?: number;
	densityNote: string;
	densitySource: CitationId;
	densityDerived?: boolean;
	modulus: { gpa: number; source: CitationId; note: string } | null;
	centreLoaded?: boolean;
	/** Shrinkage %, radial then tangential. */
	shrink: readonly [number, number];
	/** Change per point of moisture, radial then tangential. */
	change: readonly [number, number];
	changeStanding?: Wood["changeStanding"];
	movementSource: CitationId;
	uses: readonly WoodUse[];
	protection?: Protection;
	dust?: { sensitiser: boolean; note: string };
}

const wood = (id: WoodId, row: Row): Wood => ({
	id,
	name: row.name,
	latin: row.latin,
	density12KgM3: sourced({
		value: row.densityKgM3,
		unit: "kg/m³",
		sd: row.densityKgM3 * (row.densityCov ?? DEFAULT_DENSITY_COV),
		standing: row.densityDerived ? "derived" : "published",
		source: row.densitySource,
		locator: row.densityNote,
	}),
	modulusGPa: row.modulus
		? sourced({
				value: row.modulus.gpa,
				unit: "GPa",
				sd: row.modulus.gpa * MODULUS_COV,
				source: row.modulus.source,
				locator: row.modulus.note,
			})
		: null,
	modulusLoading: row.centreLoaded ? "centre" : "unstated",
	shrinkRadialPct: row.shrink[0],
	shrinkTangentialPct: row.shrink[1],
	changeRadialPerPct: row.change[0],
	changeTangentialPerPct: row.change[1],
	changeStanding: row.changeStanding ?? "derived",
	movementSource: row.movementSource,
	uses: row.uses,
	protection: row.protection ?? null,
	dust: row.dust ? { ...row.dust, source: "dust-chart-1990" } : null,
});

const COMPILED = "species table";
const SHAFT: readonly WoodUse[] = ["shaft", "butt", "veneer"];
const BUTT: readonly WoodUse[] = ["butt", "veneer"];

/**
 * Where the handbook prints no change coefficient, C = 1/(3000/S − 20) from the shrinkage S (change
 * equation with fibre saturation 30 % and start 10 %; formula from memory). It gives back the
 * handbook's own coefficients for ash, maple and walnut to the printed digit.
 */
export const WOODS: Readonly<Record<WoodId, Wood>> = {
	"white-ash": wood("white-ash", {
		name: "White ash",
		latin: "Fraxinus americana",
		densityKgM3: 672,
		densityNote: "table 5-3: G12 0.60 × 1.12",
		densitySource: "wood-handbook-2021",
		modulus: {
			gpa: 12.0,
			source: "wood-handbook-2021",
			note: "table 5-3, 12 %",
		},
		centreLoaded: true,
		shrink: [4.9, 7.8],
		change: [0.00169, 0.00274],
		changeStanding: "published",
		movementSource: "wood-handbook-2010",
		uses: SHAFT,
	}),
	"european-ash": wood("european-ash", {
		name: "European ash",
		latin: "Fraxinus excelsior",
		densityKgM3: 680,
		densityCov: 0.072,
		densityNote: `${COMPILED}; spread from Irish ash logs, table 4`,
		densitySource: "wood-compilation",
		modulus: { gpa: 12.31, source: "wood-compilation", note: COMPILED },
		shrink: [5.7, 9.6],
		change: [0.00198, 0.00342],
		movementSource: "wood-compilation",
		uses: SHAFT,
	}),
	"sugar-maple": wood("sugar-maple", {
		name: "Hard maple",
		latin: "Acer saccharum",
		densityKgM3: 706,
		densityNote: "table 5-3: G12 0.63 × 1.12",
		densitySource: "wood-handbook-2021",
		modulus: {
			gpa: 12.6,
			source: "wood-handbook-2021",
			note: "table 5-3, 12 %",
		},
		centreLoaded: true,
		shrink: [4.8, 9.9],
		change: [0.00165, 0.00353],
		changeStanding: "published",
		movementSource: "wood-handbook-2010",
		uses: SHAFT,
	}),
	hornbeam: wood("hornbeam", {
		name: "Hornbeam",
		latin: "Carpinus betulus",
		densityKgM3: 735,
		densityNote: "European hornbeam; another source 770 (540–860)",
		densitySource: "hornbeam-page",
		modulus: {
			gpa: 12.1,
			source: "hornbeam-page",
			note: "another source about 15.5",
		},
		shrink: [6.8, 11.5],
		change: [0.00237, 0.00415],
		movementSource: "hornbeam-page",
		uses: SHAFT,
	}),
	"indian-rosewood": wood("indian-rosewood", {
		name: "Indian rosewood",
		latin: "Dalbergia latifolia",
		densityKgM3: 849,
		densityNote: "air-dry 53 lb/ft³",
		densitySource: "chudnoff-1984",
		modulus: { gpa: 12.3, source: "chudnoff-1984", note: "1 780 ksi" },
		shrink: [2.7, 5.8],
		change: [0.00092, 0.00201],
		movementSource: "chudnoff-1984",
		uses: BUTT,
		protection: rosewoodListing,
		dust: {
			sensitiser: true,
			note: "irritant and sensitiser: eyes, skin, lungs",
		},
	}),
	cocobolo: wood("cocobolo", {
		name: "Cocobolo",
		latin: "Dalbergia retusa",
		densityKgM3: 1095,
		densityNote: `${COMPILED}; Chudnoff 993–1217`,
		densitySource: "wood-compilation",
		modulus: {
			gpa: 18.7,
			source: "wood-compilation",
			note: `${COMPILED}; weak, Chudnoff prints no mechanical data`,
		},
		shrink: [2.7, 4.3],
		change: [0.00092, 0.00148],
		movementSource: "wood-compilation",
		uses: BUTT,
		protection: rosewoodListing,
		dust: {
			sensitiser: true,
			note: "irritant and sensitiser: eyes, skin, lungs; oily, poor for gluing",
		},
	}),
	"african-blackwood": wood("african-blackwood", {
		name: "African blackwood",
		latin: "Dalbergia melanoxylon",
		densityKgM3: 1270,
		densityNote: COMPILED,
		densitySource: "wood-compilation",
		modulus: { gpa: 17.95, source: "wood-compilation", note: COMPILED },
		shrink: [2.9, 4.8],
		change: [0.00099, 0.00165],
		movementSource: "wood-compilation",
		uses: BUTT,
		protection: rosewoodListing,
		dust: {
			sensitiser: true,
			note: "rosewood family: irritant and sensitiser",
		},
	}),
	"gaboon-ebony": wood("gaboon-ebony", {
		name: "Gaboon ebony",
		latin: "Diospyros crassiflora",
		densityKgM3: 955,
		densityNote: `${COMPILED}; African ebony group in Chudnoff 1009`,
		densitySource: "wood-compilation",
		modulus: {
			gpa: 16.89,
			source: "wood-compilation",
			note: `${COMPILED}; Chudnoff 17.65`,
		},
		shrink: [8.3, 11.2],
		change: [0.00293, 0.00403],
		movementSource: "wood-compilation",
		uses: BUTT,
		dust: {
			sensitiser: true,
			note: "irritant and sensitiser: eyes, skin",
		},
	}),
	"macassar-ebony": wood("macassar-ebony", {
		name: "Macassar ebony",
		latin: "Diospyros celebica",
		densityKgM3: 1120,
		densityNote: `${COMPILED}; others 1030, 1090, 1150`,
		densitySource: "wood-compilation",
		modulus: { gpa: 17.35, source: "wood-compilation", note: COMPILED },
		shrink: [3.6, 7.3],
		change: [0.00123, 0.00256],
		movementSource: "wood-compilation",
		uses: BUTT,
		dust: {
			sensitiser: true,
			note: "irritant and sensitiser: eyes, skin",
		},
	}),
	"ceylon-ebony": wood("ceylon-ebony", {
		name: "Ceylon ebony",
		latin: "Diospyros ebenum",
		densityKgM3: 915,
		densityNote: `${COMPILED}; an encyclopaedia page 1190`,
		densitySource: "wood-compilation",
		modulus: { gpa: 14.07, source: "wood-compilation", note: COMPILED },
		shrink: [5.4, 8.8],
		change: [0.00187, 0.00312],
		movementSource: "wood-compilation",
		uses: BUTT,
		dust: {
			sensitiser: true,
			note: "irritant and sensitiser: eyes, skin",
		},
	}),
	zebrano: wood("zebrano", {
		name: "Zebrano",
		latin: "Microberlinia brazzavillensis",
		densityKgM3: 790,
		densityCov: 0.038,
		densityNote: "zingana sheet, density SD 0.03",
		densitySource: "tropix",
		modulus: { gpa: 17.52, source: "tropix", note: "zingana sheet" },
		shrink: [8.8, 11.0],
		change: [0.00312, 0.00396],
		movementSource: "tropix",
		uses: BUTT,
		dust: { sensitiser: true, note: "sensitiser" },
	}),
	olive: wood("olive", {
		name: "Olive",
		latin: "Olea europaea",
		densityKgM3: 870,
		densityNote: "from oven-dry 810 and tangential shrinkage 5.6 %",
		densitySource: "govorcin-2010",
		densityDerived: true,
		modulus: null,
		shrink: [3.5, 5.6],
		change: [0.00119, 0.00194],
		changeStanding: "assumed",
		movementSource: "govorcin-2010",
		uses: BUTT,
		dust: {
			sensitiser: true,
			note: "irritant and sensitiser: eyes, skin, lungs",
		},
	}),
	"black-walnut": wood("black-walnut", {
		name: "Black walnut",
		latin: "Juglans nigra",
		densityKgM3: 616,
		densityNote: "table 5-3: G12 0.55 × 1.12",
		densitySource: "wood-handbook-2021",
		modulus: {
			gpa: 11.6,
			source: "wood-handbook-2021",
			note: "table 5-3, 12 %: 1.68 Mpsi",
		},
		centreLoaded: true,
		shrink: [5.5, 7.8],
		change: [0.0019, 0.00274],
		changeStanding: "published",
		movementSource: "wood-handbook-2010",
		uses: BUTT,
		dust: { sensitiser: true, note: "sensitiser" },
	}),
	"european-walnut": wood("european-walnut", {
		name: "European walnut",
		latin: "Juglans regia",
		densityKgM3: 640,
		densityNote: COMPILED,
		densitySource: "wood-compilation",
		modulus: { gpa: 10.81, source: "wood-compilation", note: COMPILED },
		shrink: [5.5, 7.5],
		change: [0.0019, 0.00263],
		movementSource: "wood-compilation",
		uses: BUTT,
		dust: { sensitiser: true, note: "sensitiser" },
	}),
	bubinga: wood("bubinga", {
		name: "Bubinga",
		latin: "Guibourtia demeusei, tessmannii, pellegriniana",
		densityKgM3: 890,
		densityNote: `${COMPILED}; Chudnoff 801–961`,
		densitySource: "wood-compilation",
		modulus: {
			gpa: 17.1,
			source: "wood-handbook-2021",
			note: "table 5-5b: 2.48 Mpsi; Chudnoff 15.2–23.9",
		},
		shrink: [6.0, 8.2],
		change: [0.00208, 0.00289],
		movementSource: "wood-compilation",
		uses: BUTT,
		protection: {
			appendix: "II",
			note: "three Guibourtia species, annotation #15: finished products up to 10 kg of the listed wood per shipment are exempt",
			dataDate: CITES_DATE,
			source: "cites-appendices",
		},
	}),
	"african-padauk": wood("african-padauk", {
		name: "African padauk",
		latin: "Pterocarpus soyauxii",
		densityKgM3: 745,
		densityNote: "midpoint of 673–817",
		densitySource: "chudnoff-1984",
		modulus: {
			gpa: 11.4,
			source: "chudnoff-1984",
			note: "mean of 1 560 and 1 750 ksi",
		},
		shrink: [3.3, 5.2],
		change: [0.00112, 0.0018],
		movementSource: "chudnoff-1984",
		uses: BUTT,
		protection: {
			appendix: "II",
			note: "African Pterocarpus, annotation #17: logs, sawn wood, veneer, plywood and transformed wood are listed; finished goods are outside it",
			dataDate: CITES_DATE,
			source: "cites-appendices",
		},
		dust: { sensitiser: true, note: "sensitiser; affects breathing" },
	}),
	"burma-padauk": wood("burma-padauk", {
		name: "Burma padauk",
		latin: "Pterocarpus macrocarpus",
		densityKgM3: 865,
		densityNote: COMPILED,
		densitySource: "wood-compilation",
		modulus: { gpa: 14.14, source: "wood-compilation", note: COMPILED },
		shrink: [3.4, 5.8],
		change: [0.00116, 0.00201],
		movementSource: "wood-compilation",
		uses: BUTT,
		dust: { sensitiser: true, note: "sensitiser; affects breathing" },
	}),
	purpleheart: wood("purpleheart", {
		name: "Purpleheart",
		latin: "Peltogyne spp.",
		densityKgM3: 905,
		densityNote: `${COMPILED}; Chudnoff 801–1057`,
		densitySource: "wood-compilation",
		modulus: {
			gpa: 15.65,
			source: "wood-handbook-2021",
			note: "table 5-5b: 2.27 Mpsi; a compiled figure is 20.26",
		},
		shrink: [3.2, 6.1],
		change: [0.00109, 0.00212],
		movementSource: "wood-handbook-2010",
		uses: BUTT,
		dust: { sensitiser: false, note: "nausea reported" },
	}),
	bocote: wood("bocote", {
		name: "Bocote",
		latin: "Cordia spp.",
		densityKgM3: 855,
		densityNote: COMPILED,
		densitySource: "wood-compilation",
		modulus: { gpa: 12.19, source: "wood-compilation", note: COMPILED },
		shrink: [4.0, 7.4],
		change: [0.00137, 0.00259],
		movementSource: "wood-compilation",
		uses: BUTT,
	}),
	snakewood: wood("snakewood", {
		name: "Snakewood",
		latin: "Brosimum guianense",
		densityKgM3: 1210,
		densityNote: COMPILED,
		densitySource: "wood-compilation",
		modulus: { gpa: 23.2, source: "wood-compilation", note: COMPILED },
		shrink: [4.7, 6.0],
		change: [0.00162, 0.00208],
		movementSource: "wood-compilation",
		uses: BUTT,
		dust: { sensitiser: false, note: "irritant" },
	}),
};

export const WOOD_IDS = Object.keys(WOODS) as WoodId[];
