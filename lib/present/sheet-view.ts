import type { SpecContent } from "@/lib/advice/spec";
import { CITATIONS } from "@/lib/reference/citations";
import { band90 } from "@/lib/reference/estimate";
import { WOODS } from "@/lib/reference/woods";
import type { UnitSystem } from "@/lib/units/quantity";
import {
	type Both,
	formatAngle,
	formatBoth,
	formatLength,
	formatMass,
	formatMassBand,
	formatNumber,
	type Quantity,
} from "./figures";
import {
	gameName,
	HAND_LABELS,
	LAYOUT_LABELS,
	metalName,
	SPLICE_LABELS,
	TAPER_LABELS,
	woodName,
} from "./labels";
import { cautionText, RULE_LABELS } from "./notices";

export interface SheetRow {
	readonly label: string;
	readonly value: string;
	readonly note?: string;
}

/** The outline of the cue: stations from the tip, and what stands where. */
export interface ProfileView {
	readonly lengthMm: number;
	readonly points: readonly { stationMm: number; diameterMm: number }[];
	readonly marks: readonly { stationMm: number; label: string }[];
	/** How many times thicker than to scale it is drawn. */
	readonly stretch: number;
	readonly summary: string;
}

export interface SheetView {
	readonly profile: ProfileView;
	readonly summary: readonly {
		readonly label: string;
		readonly value: Both;
		readonly allowed: string;
	}[];
	readonly stations: readonly {
		readonly fromTip: Both;
		readonly fromButt: Both;
		readonly diameter: Both;
		readonly tolerance: string;
		readonly note: string;
	}[];
	readonly woods: readonly SheetRow[];
	readonly splice: readonly SheetRow[];
	readonly weight: readonly SheetRow[];
	readonly fittings: readonly SheetRow[];
	readonly finish: readonly string[];
	readonly checks: readonly {
		readonly check: string;
		readonly wanted: string;
		readonly allowed: string;
	}[];
	readonly rules: readonly {
		readonly rule: string;
		readonly ok: boolean;
		readonly source: string;
	}[];
	readonly cautions: readonly string[];
	readonly player: readonly SheetRow[];
	readonly modelVersion: string;
}

const STATION_NOTES: Readonly<Record<string, string>> = {
	ferrule: "Back of the ferrule",
	joint: "Joint",
	"splice-points": "Points of the splice",
	butt: "Butt end",
};

/** What the bench holds a finished cue to. Common practice, no source. */
const ALLOWED = {
	lengthMm: 3,
	massG: 7,
	balanceMm: 13,
	diameterMm: 0.25,
} as const;

/** A length or mass with the other unit in brackets. */
const both = (quantity: Quantity, system: UnitSystem): string => {
	const { main, other } = formatBoth(quantity, system);
	return `${main} (${other})`;
};

const allowed = (quantity: Quantity, system: UnitSystem): string =>
	`± ${formatBoth(quantity, system).main}`;

/** The saved spec as the bench reads it, from the stored numbers alone. */
export function sheetView(content: SpecContent, system: UnitSystem): SheetView {
	const { figures } = content;
	const mm = (
		value: number,
		kind: "length" | "bench" | "station" = "length",
	): Quantity => ({ mm: value, kind });
	const summary = [
		{
			label: "Length",
			quantity: mm(figures.length.value),
			allowed: mm(ALLOWED.lengthMm, "station"),
		},
		{
			label: "Weight",
			quantity: { g: figures.mass.value },
			allowed: { g: ALLOWED.massG },
		},
		{
			label: "Butt diameter",
			quantity: mm(figures.butt.value, "bench"),
			allowed: mm(ALLOWED.diameterMm, "bench"),
		},
		{
			label: "Tip diameter",
			quantity: mm(figures.tip.value, "bench"),
			allowed: mm(ALLOWED.diameterMm, "bench"),
		},
		{
			label: "Balance point from the butt end",
			quantity: mm(figures.balance.exact),
			allowed: mm(ALLOWED.balanceMm, "station"),
		},
	];
	return {
		profile: profileView(content, system),
		summary: summary.map(({ label, quantity, allowed: bound }) => ({
			label,
			value: formatBoth(quantity, system),
			allowed: allowed(bound, system),
		})),
		stations: content.stations.map((station) => ({
			fromTip: formatBoth(mm(station.stationMm, "station"), system),
			fromButt: formatBoth(mm(station.fromButtMm, "station"), system),
			diameter: formatBoth(mm(station.diameterMm, "bench"), system),
			tolerance: allowed(mm(station.toleranceMm, "bench"), system),
			note:
				station.note === null
					? ""
					: (STATION_NOTES[station.note] ?? station.note),
		})),
		woods: woodRows(content),
		splice: spliceRows(content, system),
		weight: weightRows(content, system),
		fittings: fittingRows(content, system),
		finish: FINISH,
		checks: summary.map(({ label, quantity, allowed: bound }) => ({
			check: label,
			wanted: both(quantity, system),
			allowed: allowed(bound, system),
		})),
		rules: content.rules.map(({ rule, ok, source }) => ({
			rule: RULE_LABELS[rule] ?? rule,
			ok,
			source: CITATIONS[source].title,
		})),
		cautions: content.workshopCautions.map((caution) =>
			cautionText(caution, system),
		),
		player: playerRows(content, system),
		modelVersion: content.modelVersion,
	};
}

const STRETCH = 4;

function profileView(
	{ stations, figures }: SpecContent,
	system: UnitSystem,
): ProfileView {
	const diameter = (mm: number) => formatLength(mm, system, "bench");
	return {
		lengthMm: figures.length.value,
		points: stations,
		marks: stations
			.filter(({ note }) => note !== null)
			.map(({ stationMm, diameterMm, note }) => ({
				stationMm,
				label: `${STATION_NOTES[note ?? ""] ?? note}: ${diameter(diameterMm)}`,
			})),
		stretch: STRETCH,
		summary: `Outline of the cue: ${formatLength(figures.length.value, system)} long, from ${diameter(figures.tip.value)} at the tip to ${diameter(figures.butt.value)} at the butt end.`,
	};
}

const FINISH = [
	"Grain filler: leave to soak about a day before the surplus is taken off (common practice, no source).",
	"Finish: oil polish, no varnish, unless the order says otherwise. Oily rags can heat up by themselves: dry them flat, outdoors.",
	"Ferrule flush with the wood; never file it when a tip is changed, only clean off old glue.",
] as const;

function woodRows({ request }: SpecContent): SheetRow[] {
	const density = (id: keyof typeof WOODS) => {
		const { density12KgM3 } = WOODS[id];
		const { low, high } = band90(density12KgM3);
		return `${formatNumber(density12KgM3.value)} kg/m³ at 12 % moisture in the tables, nine billets in ten ${formatNumber(low)} to ${formatNumber(high)}: weigh and measure the blank`;
	};
	return [
		{
			label: "Shaft and core",
			value: woodName(request.shaftWood),
			note: density(request.shaftWood),
		},
		{
			label: "Butt",
			value: woodName(request.buttWood),
			note: density(request.buttWood),
		},
		{ label: "Taper", value: TAPER_LABELS[request.taperShape] },
	];
}

/** The splice in the order it is glued: which face, what wood, the flat against the axis. */
function spliceRows(
	{ design, request, stations }: SpecContent,
	system: UnitSystem,
): SheetRow[] {
	const points = stations
		.filter(({ note }) => note === "splice-points")
		.map(({ fromButtMm }) => both({ mm: fromButtMm, kind: "station" }, system));
	const rows: SheetRow[] = [
		{
			label: "Splice",
			value: SPLICE_LABELS[request.splice],
			...(points.length > 0 && {
				note: `Points ${points.join(" and ")} from the butt end`,
			}),
		},
	];
	return [
		...rows,
		...design.splice.cuts.map((cut, i) => ({
			label: `${i + 1}. ${cut.part}, face at ${formatAngle(cut.faceAngleDeg, 0)}`,
			value: woodName(cut.wood),
			note: `Flat ${formatAngle(cut.angleDeg, 2)} to the axis, ${both({ mm: cut.buttOffsetMm, kind: "bench" }, system)} from it at the butt end`,
		})),
	];
}

function weightRows(
	{ naturalMassG, addedWeight, figures, design }: SpecContent,
	system: UnitSystem,
): SheetRow[] {
	const rows: SheetRow[] = [
		{
			label: "Natural weight, computed",
			value: both({ g: naturalMassG.value }, system),
			note: `Nine in ten builds: ${formatMassBand(band90(naturalMassG), system)}. Weigh before boring.`,
		},
		{ label: "Wanted weight", value: both({ g: figures.mass.value }, system) },
		{
			label: "To be added, net",
			value: both({ g: addedWeight.addedMassG.value, kind: "added" }, system),
			note: `Nine in ten builds: ${formatMassBand(band90(addedWeight.addedMassG), system, "added")}.`,
		},
	];
	if (addedWeight.metalMassG <= 0) return rows;
	const station = (mm: number) => both({ mm, kind: "station" }, system);
	const across = (mm: number) => both({ mm, kind: "bench" }, system);
	rows.push({
		label: `${metalName(addedWeight.metal)} in all`,
		value: both({ g: addedWeight.metalMassG, kind: "added" }, system),
		note: `The bore takes out ${formatMass(addedWeight.drilledOutMassG, system, "added")} of wood; the plug weighs ${formatMass(addedWeight.plugMassG, system, "added")}.`,
	});
	if (addedWeight.slugLengthMm > 0)
		rows.push({
			label: "Bore from the butt end",
			value: `${across(addedWeight.boreDiameterMm)} across, ${station(addedWeight.boreDepthMm)} deep`,
			note: `Slug ${station(addedWeight.slugLengthMm)} long, its rear face ${station(addedWeight.slugFromButtMm)} from the butt end; plug behind it.`,
		});
	const { jointSlug } = addedWeight;
	if (jointSlug !== null)
		rows.push({
			label: "Bore behind the joint",
			value: `${across(jointSlug.diameterMm)} across`,
			note: `Slug ${station(jointSlug.slugLengthMm)} long, its front face ${station(design.lengthMm - jointSlug.fromStationMm)} from the butt end.`,
		});
	return rows;
}

function fittingRows(
	{ request, design, figures }: SpecContent,
	system: UnitSystem,
): SheetRow[] {
	const { tip, ferrule, joint, endJoint, buttEndRadiusMm, lengthMm } = design;
	const fine = (mm: number) => formatLength(mm, system, "bench");
	const jointRow = (
		label: string,
		at: NonNullable<typeof joint>,
	): SheetRow => ({
		label,
		value: `${both({ mm: lengthMm - at.stationMm, kind: "station" }, system)} from the butt end`,
		note: `${metalName(at.metal)} pin ${fine(at.pinDiameterMm)} across, ${formatLength(at.pinReachMm, system, "station")} into each piece; collars ${fine(at.collarMm)} long`,
	});
	return [
		{
			label: "Tip",
			value: `${both({ mm: figures.tip.value, kind: "bench" }, system)}, leather`,
			note: `${fine(tip.heightMm)} high at the crown, dome radius ${fine(tip.domeRadiusMm)}`,
		},
		{
			label: "Ferrule",
			value: `${metalName(ferrule.metal)}, ${fine(ferrule.lengthMm)} long`,
			note: `Wall ${fine(ferrule.wallMm)} over a tenon of the shaft`,
		},
		{
			label: "Pieces",
			value: LAYOUT_LABELS[request.layout],
			...(joint === null && { note: "No joint" }),
		},
		...(joint === null ? [] : [jointRow("Joint", joint)]),
		...(endJoint === null ? [] : [jointRow("Screw-in end piece", endJoint)]),
		{ label: "Butt end", value: `Edge rounded to ${fine(buttEndRadiusMm)}` },
	];
}

function playerRows(
	{ input, gameId }: SpecContent,
	system: UnitSystem,
): SheetRow[] {
	const rows: SheetRow[] = [{ label: "Game", value: gameName(gameId) }];
	if (input.hand !== undefined)
		rows.push({ label: "Playing hand", value: HAND_LABELS[input.hand] });
	const readings = input.player.gripCircleReadingsMm ?? [];
	if (readings.length > 0)
		rows.push({
			label: "Grip circle readings",
			value: readings
				.map((reading) => formatLength(reading, system, "bench"))
				.join(", "),
		});
	return rows;
}
