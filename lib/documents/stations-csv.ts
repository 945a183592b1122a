import { sheetView } from "@/lib/present/sheet-view";
import { mmToInches } from "@/lib/units/quantity";
import { ENGLISH } from "@/lib/words/en/messages";
import { readerOf } from "@/lib/words/reader";
import type { BuildContent } from "@/lib/workshop/job-content";
import { csvText } from "./csv";
import { decimal } from "./decimal";

/** 0.01 mm and 0.0001 in: finer than any station is turned to. */
const MM_DECIMALS = 2;
const INCH_DECIMALS = 4;

const QUANTITIES = [
	["fromButt", "fromButtMm"],
	["fromTip", "stationMm"],
	["diameter", "diameterMm"],
	["tolerance", "toleranceMm"],
] as const;

/** What a machine reads is in one language. */
const FOR_MACHINES = readerOf({ system: "metric", language: "en" }, ENGLISH);

/** The diameters at stations of a frozen build, in the sheet's order, each in both units. */
export function stationsCsv(content: BuildContent): string {
	const { say } = FOR_MACHINES;
	const { stations } = sheetView(content, FOR_MACHINES);
	return csvText(
		[
			...QUANTITIES.map(([name]) => say(`sheet.stations.${name}`)).flatMap(
				(label) => [`${label} (mm)`, `${label} (in)`],
			),
			say("sheet.stations.here"),
		],
		content.stations.map((station, i) => [
			...QUANTITIES.flatMap(([, field]) => [
				decimal(station[field], MM_DECIMALS),
				decimal(mmToInches(station[field]), INCH_DECIMALS),
			]),
			stations[i]?.note ?? "",
		]),
	);
}
