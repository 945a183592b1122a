import { band90 } from "@/lib/reference/estimate";
import { WOODS, type WoodId } from "@/lib/reference/woods";
import type { MessageKey, Reader } from "@/lib/words/reader";
import type { BuildContent } from "@/lib/workshop/job-content";
import type { JobExtras } from "@/lib/workshop/job-extras";
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

/** The woods with the densities they were worked out with, or those of the tables. */
export function woodRows(
	{ request, billets }: BuildContent,
	reader: Reader,
): SheetRow[] {
	const { say } = reader;
	const density = (id: WoodId) => {
		const known = billets.find(({ wood }) => wood === id)?.densityKgM3;
		const estimate = known ?? WOODS[id].density12KgM3;
		const { low, high } = band90(estimate);
		return say(
			known?.standing === "measured"
				? "sheet.woods.measured"
				: "sheet.woods.density",
			{
				density: formatNumber(estimate.value, reader),
				low: formatNumber(low, reader),
				high: formatNumber(high, reader),
			},
		);
	};
	return [
		{
			label: say("sheet.woods.shaft"),
			value: woodName(request.shaftWood, reader),
			note: density(request.shaftWood),
		},
		{
			label: say("sheet.woods.butt"),
			value: woodName(request.buttWood, reader),
			note: density(request.buttWood),
		},
		{
			label: say("sheet.woods.taper"),
			value: taperLabel(request.taperShape, reader),
		},
	];
}

/** The splice in the order it is glued: which face, what wood, the flat against the axis. */
export function spliceRows(
	{ design, request, stations }: BuildContent,
	reader: Reader,
): SheetRow[] {
	const { say } = reader;
	const points = stations
		.filter(({ note }) => note === "splice-points")
		.map(({ fromButtMm }) => both({ mm: fromButtMm, kind: "station" }, reader));
	const rows: SheetRow[] = [
		{
			label: say("sheet.splice.kind"),
			value: spliceLabel(request.splice, reader),
			...(points.length > 0 && {
				note: say("sheet.splice.points", {
					places: points.join(say("sheet.splice.and")),
				}),
			}),
		},
	];
	return [
		...rows,
		...design.splice.cuts.map((cut, i) => ({
			label: say("sheet.splice.cut", {
				count: i + 1,
				part: splicePart(cut.part, reader),
				angle: formatAngle(cut.faceAngleDeg, reader, 0),
			}),
			value: woodName(cut.wood, reader),
			note: say("sheet.splice.flat", {
				angle: formatAngle(cut.angleDeg, reader, 2),
				offset: both({ mm: cut.buttOffsetMm, kind: "bench" }, reader),
			}),
		})),
	];
}

const VENEER = / veneer$/;

/** A part of the splice by its name in the design; an unknown one as it is. */
function splicePart(part: string, { say }: Reader): string {
	const wedge = part.replace(VENEER, "");
	const key = `sheet.splice.part.${wedge}` as MessageKey;
	const name = say.has(key) ? say(key as never) : wedge;
	return VENEER.test(part) ? say("sheet.splice.veneer", { part: name }) : name;
}

export function weightRows(
	{ naturalMassG, addedWeight, targets, design }: BuildContent,
	reader: Reader,
): SheetRow[] {
	const { say } = reader;
	const rows: SheetRow[] = [
		{
			label: say("sheet.weight.natural"),
			value: both({ g: naturalMassG.value }, reader),
			note: say("sheet.weight.naturalNote", {
				band: formatMassBand(band90(naturalMassG), reader),
			}),
		},
		{
			label: say("sheet.weight.wanted"),
			value: both({ g: targets.mass.value }, reader),
		},
		{
			label: say("sheet.weight.added"),
			value: both({ g: addedWeight.addedMassG.value, kind: "added" }, reader),
			note: say("sheet.weight.addedNote", {
				band: formatMassBand(band90(addedWeight.addedMassG), reader, "added"),
			}),
		},
	];
	if (addedWeight.metalMassG <= 0) return rows;
	const station = (mm: number) => both({ mm, kind: "station" }, reader);
	const across = (mm: number) => both({ mm, kind: "bench" }, reader);
	rows.push({
		label: say("sheet.weight.metal", {
			metal: metalName(addedWeight.metal, reader),
		}),
		value: both({ g: addedWeight.metalMassG, kind: "added" }, reader),
		note: say("sheet.weight.metalNote", {
			drilled: formatMass(addedWeight.drilledOutMassG, reader, "added"),
			plug: formatMass(addedWeight.plugMassG, reader, "added"),
		}),
	});
	if (addedWeight.slugLengthMm > 0)
		rows.push({
			label: say("sheet.weight.bore"),
			value: say("sheet.weight.boreValue", {
				across: across(addedWeight.boreDiameterMm),
				deep: station(addedWeight.boreDepthMm),
			}),
			note: say("sheet.weight.boreNote", {
				length: station(addedWeight.slugLengthMm),
				from: station(addedWeight.slugFromButtMm),
			}),
		});
	const { jointSlug } = addedWeight;
	if (jointSlug !== null)
		rows.push({
			label: say("sheet.weight.jointBore"),
			value: say("sheet.weight.jointBoreValue", {
				across: across(jointSlug.diameterMm),
			}),
			note: say("sheet.weight.jointBoreNote", {
				length: station(jointSlug.slugLengthMm),
				from: station(design.lengthMm - jointSlug.fromStationMm),
			}),
		});
	return rows;
}

export function fittingRows(
	{ request, design, targets }: BuildContent,
	reader: Reader,
	extras: JobExtras | null = null,
): SheetRow[] {
	const { say } = reader;
	const { tip, ferrule, joint, endJoint, buttEndRadiusMm, lengthMm } = design;
	const fine = (mm: number) => formatLength(mm, reader, "bench");
	const jointRow = (
		label: string,
		at: NonNullable<typeof joint>,
	): SheetRow => ({
		label,
		value: say("sheet.fittings.jointValue", {
			from: both({ mm: lengthMm - at.stationMm, kind: "station" }, reader),
		}),
		note: say("sheet.fittings.jointNote", {
			metal: metalName(at.metal, reader),
			across: fine(at.pinDiameterMm),
			reach: formatLength(at.pinReachMm, reader, "station"),
			collar: fine(at.collarMm),
		}),
	});
	const across = both({ mm: targets.tip.value, kind: "bench" }, reader);
	return [
		{
			label: say("sheet.fittings.tip"),
			value:
				extras?.tip == null
					? say("sheet.fittings.tipValue", { across })
					: say("sheet.fittings.tipNamed", { across, name: extras.tip }),
			note: say("sheet.fittings.tipNote", {
				high: fine(tip.heightMm),
				radius: fine(tip.domeRadiusMm),
			}),
		},
		{
			label: say("sheet.fittings.ferrule"),
			value: say("sheet.fittings.ferruleValue", {
				metal: metalName(ferrule.metal, reader),
				length: fine(ferrule.lengthMm),
			}),
			note: say("sheet.fittings.ferruleNote", { wall: fine(ferrule.wallMm) }),
		},
		{
			label: say("sheet.fittings.pieces"),
			value: layoutLabel(request.layout, reader),
			...(joint === null && { note: say("sheet.fittings.noJoint") }),
		},
		...(joint === null ? [] : [jointRow(say("sheet.fittings.joint"), joint)]),
		...(endJoint === null
			? []
			: [jointRow(say("sheet.fittings.endPiece"), endJoint)]),
		{
			label: say("sheet.fittings.buttEnd"),
			value: say("sheet.fittings.buttEndValue", {
				radius: fine(buttEndRadiusMm),
			}),
		},
		...(extras?.case == null
			? []
			: [{ label: say("sheet.fittings.case"), value: extras.case }]),
		...(extras === null || extras.gripNotes === ""
			? []
			: [{ label: say("sheet.fittings.grip"), value: extras.gripNotes }]),
	];
}

export function playerRows(
	{ hand, gripCircleReadingsMm: readings, gameId }: BuildContent,
	reader: Reader,
): SheetRow[] {
	const { say } = reader;
	const rows: SheetRow[] = [
		{ label: say("sheet.player.game"), value: gameName(gameId, reader) },
	];
	if (hand !== null)
		rows.push({
			label: say("sheet.player.hand"),
			value: handLabel(hand, reader),
		});
	if (readings.length > 0)
		rows.push({
			label: say("sheet.player.readings"),
			value: readings
				.map((reading) => formatLength(reading, reader, "bench"))
				.join(", "),
		});
	return rows;
}
