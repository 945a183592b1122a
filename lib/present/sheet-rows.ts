import { band90 } from "@/lib/reference/estimate";
import { WOODS } from "@/lib/reference/woods";
import type { Reader } from "@/lib/words/reader";
import type { BuildContent } from "@/lib/workshop/job-content";
import {
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
	handLabel,
	layoutLabel,
	metalName,
	spliceLabel,
	taperLabel,
	woodName,
} from "./labels";

export interface SheetRow {
	readonly label: string;
	readonly value: string;
	readonly note?: string;
}

/** A length or mass with the other unit in brackets. */
export const both = (quantity: Quantity, reader: Reader): string => {
	const { main, other } = formatBoth(quantity, reader);
	return `${main} (${other})`;
};

export function woodRows(
	{ request }: BuildContent,
	reader: Reader,
): SheetRow[] {
	const density = (id: keyof typeof WOODS) => {
		const { density12KgM3 } = WOODS[id];
		const { low, high } = band90(density12KgM3);
		return `${formatNumber(density12KgM3.value, reader)} kg/m³ at 12 % moisture in the tables, nine billets in ten ${formatNumber(low, reader)} to ${formatNumber(high, reader)}: weigh and measure the blank`;
	};
	return [
		{
			label: "Shaft and core",
			value: woodName(request.shaftWood, reader),
			note: density(request.shaftWood),
		},
		{
			label: "Butt",
			value: woodName(request.buttWood, reader),
			note: density(request.buttWood),
		},
		{ label: "Taper", value: taperLabel(request.taperShape, reader) },
	];
}

/** The splice in the order it is glued: which face, what wood, the flat against the axis. */
export function spliceRows(
	{ design, request, stations }: BuildContent,
	reader: Reader,
): SheetRow[] {
	const points = stations
		.filter(({ note }) => note === "splice-points")
		.map(({ fromButtMm }) => both({ mm: fromButtMm, kind: "station" }, reader));
	const rows: SheetRow[] = [
		{
			label: "Splice",
			value: spliceLabel(request.splice, reader),
			...(points.length > 0 && {
				note: `Points ${points.join(" and ")} from the butt end`,
			}),
		},
	];
	return [
		...rows,
		...design.splice.cuts.map((cut, i) => ({
			label: `${i + 1}. ${cut.part}, face at ${formatAngle(cut.faceAngleDeg, reader, 0)}`,
			value: woodName(cut.wood, reader),
			note: `Flat ${formatAngle(cut.angleDeg, reader, 2)} to the axis, ${both({ mm: cut.buttOffsetMm, kind: "bench" }, reader)} from it at the butt end`,
		})),
	];
}

export function weightRows(
	{ naturalMassG, addedWeight, targets, design }: BuildContent,
	reader: Reader,
): SheetRow[] {
	const rows: SheetRow[] = [
		{
			label: "Natural weight, computed",
			value: both({ g: naturalMassG.value }, reader),
			note: `Nine in ten builds: ${formatMassBand(band90(naturalMassG), reader)}. Weigh before boring.`,
		},
		{ label: "Wanted weight", value: both({ g: targets.mass.value }, reader) },
		{
			label: "To be added, net",
			value: both({ g: addedWeight.addedMassG.value, kind: "added" }, reader),
			note: `Nine in ten builds: ${formatMassBand(band90(addedWeight.addedMassG), reader, "added")}.`,
		},
	];
	if (addedWeight.metalMassG <= 0) return rows;
	const station = (mm: number) => both({ mm, kind: "station" }, reader);
	const across = (mm: number) => both({ mm, kind: "bench" }, reader);
	rows.push({
		label: `${metalName(addedWeight.metal, reader)} in all`,
		value: both({ g: addedWeight.metalMassG, kind: "added" }, reader),
		note: `The bore takes out ${formatMass(addedWeight.drilledOutMassG, reader, "added")} of wood; the plug weighs ${formatMass(addedWeight.plugMassG, reader, "added")}.`,
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

export function fittingRows(
	{ request, design, targets }: BuildContent,
	reader: Reader,
): SheetRow[] {
	const { tip, ferrule, joint, endJoint, buttEndRadiusMm, lengthMm } = design;
	const fine = (mm: number) => formatLength(mm, reader, "bench");
	const jointRow = (
		label: string,
		at: NonNullable<typeof joint>,
	): SheetRow => ({
		label,
		value: `${both({ mm: lengthMm - at.stationMm, kind: "station" }, reader)} from the butt end`,
		note: `${metalName(at.metal, reader)} pin ${fine(at.pinDiameterMm)} across, ${formatLength(at.pinReachMm, reader, "station")} into each piece; collars ${fine(at.collarMm)} long`,
	});
	return [
		{
			label: "Tip",
			value: `${both({ mm: targets.tip.value, kind: "bench" }, reader)}, leather`,
			note: `${fine(tip.heightMm)} high at the crown, dome radius ${fine(tip.domeRadiusMm)}`,
		},
		{
			label: "Ferrule",
			value: `${metalName(ferrule.metal, reader)}, ${fine(ferrule.lengthMm)} long`,
			note: `Wall ${fine(ferrule.wallMm)} over a tenon of the shaft`,
		},
		{
			label: "Pieces",
			value: layoutLabel(request.layout, reader),
			...(joint === null && { note: "No joint" }),
		},
		...(joint === null ? [] : [jointRow("Joint", joint)]),
		...(endJoint === null ? [] : [jointRow("Screw-in end piece", endJoint)]),
		{ label: "Butt end", value: `Edge rounded to ${fine(buttEndRadiusMm)}` },
	];
}

export function playerRows(
	{ hand, gripCircleReadingsMm: readings, gameId }: BuildContent,
	reader: Reader,
): SheetRow[] {
	const rows: SheetRow[] = [{ label: "Game", value: gameName(gameId, reader) }];
	if (hand !== null)
		rows.push({ label: "Playing hand", value: handLabel(hand, reader) });
	if (readings.length > 0)
		rows.push({
			label: "Grip circle readings",
			value: readings
				.map((reading) => formatLength(reading, reader, "bench"))
				.join(", "),
		});
	return rows;
}
