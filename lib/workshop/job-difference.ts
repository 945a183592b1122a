import type { JobContent, TargetId } from "./job-content";
import type { MayVary } from "./may-vary";

/** One side of a difference, as data: lib/present puts it into words. */
export type Told =
	| { readonly kind: "figure"; readonly id: TargetId; readonly value: number }
	| { readonly kind: "length-mm"; readonly value: number }
	| { readonly kind: "mass-g"; readonly value: number }
	| {
			readonly kind:
				| "wood"
				| "splice"
				| "layout"
				| "taper"
				| "metal"
				| "game"
				| "hand";
			readonly id: string;
	  }
	| { readonly kind: "woods"; readonly ids: readonly string[] }
	| {
			readonly kind: "money";
			readonly minor: number;
			readonly currency: string;
			readonly minorPerUnit: number;
	  }
	| { readonly kind: "date"; readonly isoDate: string }
	| { readonly kind: "may-vary"; readonly list: readonly MayVary[] }
	| { readonly kind: "text"; readonly text: string }
	| { readonly kind: "none" };

export const DIFFERENCES = [
	"length",
	"mass",
	"butt",
	"tip",
	"balance",
	"shaft-wood",
	"butt-wood",
	"splice",
	"decoration",
	"layout",
	"joint",
	"taper",
	"ferrule",
	"added-weight",
	"tip-leather",
	"case",
	"grip-notes",
	"game",
	"hand",
	"price",
	"valid-until",
	"may-vary",
	"quote-note",
	"models",
] as const;
export type DifferenceId = (typeof DIFFERENCES)[number];

export interface JobDifference {
	readonly what: DifferenceId;
	readonly before: Told;
	readonly after: Told;
}

export interface JobDifferences {
	readonly told: readonly JobDifference[];
	/** The largest change of a diameter at a station of the sheet, mm either way; null where none changed. */
	readonly largestDiameterChangeMm: number | null;
	/** Something else in the drawing or its figures changed that no line here names. */
	readonly isMore: boolean;
}

const none: Told = { kind: "none" };
const text = (given: string | null): Told =>
	given === null || given === "" ? none : { kind: "text", text: given };
const choice = (
	kind: "wood" | "splice" | "layout" | "taper" | "metal" | "game" | "hand",
	id: string | null,
): Told => (id === null ? none : { kind, id });

function tellings({
	build,
	extras,
	quote,
}: JobContent): Readonly<Record<DifferenceId, Told>> {
	const { request, design, targets } = build;
	const figure = (id: TargetId): Told => ({
		kind: "figure",
		id,
		value: targets[id].value,
	});
	const decoration = design.splice.cuts
		.map(({ wood }) => wood)
		.filter((wood) => wood !== request.buttWood && wood !== request.shaftWood);
	return {
		length: figure("length"),
		mass: figure("mass"),
		butt: figure("butt"),
		tip: figure("tip"),
		balance: figure("balance"),
		"shaft-wood": choice("wood", request.shaftWood),
		"butt-wood": choice("wood", request.buttWood),
		splice: choice("splice", request.splice),
		decoration:
			decoration.length === 0 ? none : { kind: "woods", ids: decoration },
		layout: choice("layout", request.layout),
		joint:
			design.joint === null
				? none
				: {
						kind: "length-mm",
						value: design.lengthMm - design.joint.stationMm,
					},
		taper: choice("taper", request.taperShape),
		ferrule: choice("metal", request.ferruleMetal),
		"added-weight": {
			kind: "mass-g",
			value: build.addedWeight.addedMassG.value,
		},
		"tip-leather": text(extras.tip),
		case: text(extras.case),
		"grip-notes": text(extras.gripNotes),
		game: choice("game", build.gameId),
		hand: choice("hand", build.hand),
		price:
			quote === null
				? none
				: {
						kind: "money",
						minor: quote.priceMinor,
						currency: quote.currency,
						minorPerUnit: quote.minorPerUnit,
					},
		"valid-until":
			quote === null ? none : { kind: "date", isoDate: quote.validUntil },
		"may-vary":
			quote === null || quote.mayVary.length === 0
				? none
				: { kind: "may-vary", list: quote.mayVary },
		"quote-note": text(quote?.note ?? null),
		models: { kind: "text", text: build.modelVersion },
	};
}

/** Less than a bench can read is no change. */
const FELT = { "length-mm": 0.05, "mass-g": 0.05, figure: 0.005 } as const;

function isSame(a: Told, b: Told): boolean {
	if (
		(a.kind === "figure" && b.kind === "figure") ||
		(a.kind === "length-mm" && b.kind === "length-mm") ||
		(a.kind === "mass-g" && b.kind === "mass-g")
	)
		return Math.abs(a.value - b.value) < FELT[a.kind];
	return isSameData(a, b);
}

/** What a revision of a job changes against an earlier one, in the order a reader would ask. */
export function jobDifferences(
	before: JobContent,
	after: JobContent,
): JobDifferences {
	const was = tellings(before);
	const is = tellings(after);
	const told = DIFFERENCES.filter((what) => !isSame(was[what], is[what])).map(
		(what) => ({
			what,
			before: was[what],
			after: is[what],
		}),
	);
	const largestDiameterChangeMm = largestChangeMm(before, after);
	return {
		told,
		largestDiameterChangeMm,
		isMore:
			told.length === 0 &&
			largestDiameterChangeMm === null &&
			!isSameData(shownOf(before), shownOf(after)),
	};
}

/** Stations are compared by their distance from the butt end, where a cue is measured from. */
function largestChangeMm(before: JobContent, after: JobContent): number | null {
	let largest = 0;
	for (const { fromButtMm, diameterMm } of after.build.stations) {
		const same = before.build.stations.find(
			(one) => Math.abs(one.fromButtMm - fromButtMm) < 0.05,
		);
		if (same !== undefined)
			largest = Math.max(largest, Math.abs(same.diameterMm - diameterMm));
	}
	return largest >= 0.005 ? largest : null;
}

/** Plain JSON told apart by what it says, in whatever order its members were written. */
function isSameData(a: unknown, b: unknown): boolean {
	if (
		typeof a !== "object" ||
		a === null ||
		typeof b !== "object" ||
		b === null
	)
		return a === b;
	if (Array.isArray(a) !== Array.isArray(b)) return false;
	const [one, other] = [entriesOf(a), entriesOf(b)];
	return (
		one.length === other.length &&
		one.every(
			([name, value], i) =>
				other[i]?.[0] === name && isSameData(value, other[i]?.[1]),
		)
	);
}

/** In the order of the names; what is not there is as good as left out. */
const entriesOf = (object: object): (readonly [string, unknown])[] =>
	Object.entries(object)
		.filter(([, value]) => value !== undefined)
		.sort(([a], [b]) => (a < b ? -1 : 1));

/** What a customer or a bench may go by. Which settings it was worked out with is no change of the cue. */
const shownOf = ({ build, extras, quote }: JobContent) => {
	const { billets: _, ...cue } = build;
	return { cue, extras, quote };
};
