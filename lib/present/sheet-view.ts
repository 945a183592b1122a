import { FINISHED_TOLERANCE } from "@/lib/build/tolerance";
import { CITATIONS } from "@/lib/reference/citations";
import type { Reader } from "@/lib/words/reader";
import type { BuildContent } from "@/lib/workshop/job-content";
import { type Both, formatBoth, type Quantity } from "./figures";
import { ruleLabel } from "./labels";
import { cautionText } from "./notices";
import {
	both,
	fittingRows,
	playerRows,
	type SheetRow,
	spliceRows,
	weightRows,
	woodRows,
} from "./sheet-rows";

export interface SheetView {
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

const allowed = (quantity: Quantity, reader: Reader): string =>
	`± ${formatBoth(quantity, reader).main}`;

/** A frozen build as the bench reads it, from the stored numbers alone. */
export function sheetView(content: BuildContent, reader: Reader): SheetView {
	const { targets } = content;
	const mm = (
		value: number,
		kind: "length" | "bench" | "station" = "length",
	): Quantity => ({ mm: value, kind });
	const summary = [
		{
			label: "Length",
			quantity: mm(targets.length.value),
			allowed: mm(FINISHED_TOLERANCE.lengthMm, "station"),
		},
		{
			label: "Weight",
			quantity: { g: targets.mass.value },
			allowed: { g: FINISHED_TOLERANCE.massG },
		},
		{
			label: "Butt diameter",
			quantity: mm(targets.butt.value, "bench"),
			allowed: mm(FINISHED_TOLERANCE.diameterMm, "bench"),
		},
		{
			label: "Tip diameter",
			quantity: mm(targets.tip.value, "bench"),
			allowed: mm(FINISHED_TOLERANCE.diameterMm, "bench"),
		},
		{
			label: "Balance point from the butt end",
			quantity: mm(targets.balance.value),
			allowed: mm(FINISHED_TOLERANCE.balanceMm, "station"),
		},
	];
	return {
		summary: summary.map(({ label, quantity, allowed: bound }) => ({
			label,
			value: formatBoth(quantity, reader),
			allowed: allowed(bound, reader),
		})),
		stations: content.stations.map((station) => ({
			fromTip: formatBoth(mm(station.stationMm, "station"), reader),
			fromButt: formatBoth(mm(station.fromButtMm, "station"), reader),
			diameter: formatBoth(mm(station.diameterMm, "bench"), reader),
			tolerance: allowed(mm(station.toleranceMm, "bench"), reader),
			note:
				station.note === null
					? ""
					: (STATION_NOTES[station.note] ?? station.note),
		})),
		woods: woodRows(content, reader),
		splice: spliceRows(content, reader),
		weight: weightRows(content, reader),
		fittings: fittingRows(content, reader),
		finish: FINISH,
		checks: summary.map(({ label, quantity, allowed: bound }) => ({
			check: label,
			wanted: both(quantity, reader),
			allowed: allowed(bound, reader),
		})),
		rules: content.rules.map(({ rule, ok, source }) => ({
			rule: ruleLabel(rule, reader),
			ok,
			source: CITATIONS[source].title,
		})),
		cautions: content.workshopCautions.map((caution) =>
			cautionText(caution, reader),
		),
		player: playerRows(content, reader),
		modelVersion: content.modelVersion,
	};
}

const FINISH = [
	"Grain filler: leave to soak about a day before the surplus is taken off (common practice, no source).",
	"Finish: oil polish, no varnish, unless the order says otherwise. Oily rags can heat up by themselves: dry them flat, outdoors.",
	"Ferrule flush with the wood; never file it when a tip is changed, only clean off old glue.",
] as const;
