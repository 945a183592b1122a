import { FINISHED_TOLERANCE } from "@/lib/build/tolerance";
import { CITATIONS } from "@/lib/reference/citations";
import type { Reader } from "@/lib/words/reader";
import type { BuildContent, TargetId } from "@/lib/workshop/job-content";
import type { JobExtras } from "@/lib/workshop/job-extras";
import type { Stock } from "@/lib/workshop/stock";
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
import {
	type PickRow,
	pickRows,
	type StepsView,
	stepsView,
} from "./sheet-work";

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
	/** The rules of the game the cue was held to, in one sentence; null where there are none. */
	readonly rules: string | null;
	readonly cautions: readonly string[];
	readonly player: readonly SheetRow[];
	readonly modelVersion: string;
	/** Billets to pick; empty where they were not worked out. */
	readonly picks: readonly PickRow[];
	/** The order of the work. */
	readonly steps: StepsView;
}

/** What the workshop adds to the sheet of a build. */
export interface SheetAtHand {
	/** What goes with the cue; none on a spec, which orders nothing yet. */
	readonly extras: JobExtras;
	/** Wood at hand, from which billets are named. */
	readonly stock: Stock;
}

/**
 * A frozen build as the bench reads it, from the stored numbers alone, with what goes with the cue and
 * the billets at hand where those are given.
 */
export function sheetView(
	content: BuildContent,
	reader: Reader,
	atHand: SheetAtHand | null = null,
): SheetView {
	const { say } = reader;
	const summary = summaryOf(content);
	const allowed = (quantity: Quantity) =>
		say("sheet.allowed", { amount: formatBoth(quantity, reader).main });
	return {
		summary: summary.map(({ id, quantity, bound }) => ({
			label: say(`sheet.figure.${id}`),
			value: formatBoth(quantity, reader),
			allowed: allowed(bound),
		})),
		stations: content.stations.map((station) => ({
			fromTip: formatBoth(mm(station.stationMm, "station"), reader),
			fromButt: formatBoth(mm(station.fromButtMm, "station"), reader),
			diameter: formatBoth(mm(station.diameterMm, "bench"), reader),
			tolerance: allowed(mm(station.toleranceMm, "bench")),
			note:
				station.note === null ? "" : say(`sheet.stationNote.${station.note}`),
		})),
		woods: woodRows(content, reader),
		splice: spliceRows(content, reader),
		weight: weightRows(content, reader),
		fittings: fittingRows(content, reader, atHand?.extras ?? null),
		finish: [
			say("sheet.finish.filler"),
			say("sheet.finish.oil"),
			say("sheet.finish.ferrule"),
		],
		checks: summary.map(({ id, quantity, bound }) => ({
			check: say(`sheet.figure.${id}`),
			wanted: both(quantity, reader),
			allowed: allowed(bound),
		})),
		rules: rulesText(content, reader),
		cautions: content.workshopCautions.map((caution) =>
			cautionText(caution, reader),
		),
		player: playerRows(content, reader),
		modelVersion: content.modelVersion,
		picks: pickRows(content, reader, atHand?.stock ?? null),
		steps: stepsView(content, reader),
	};
}

const mm = (
	value: number,
	kind: "length" | "bench" | "station" = "length",
): Quantity => ({ mm: value, kind });

/** The five figures a finished cue is held to, with what is allowed either side. */
const summaryOf = ({
	targets,
}: BuildContent): readonly {
	id: TargetId;
	quantity: Quantity;
	bound: Quantity;
}[] => [
	{
		id: "length",
		quantity: mm(targets.length.value),
		bound: mm(FINISHED_TOLERANCE.lengthMm, "station"),
	},
	{
		id: "mass",
		quantity: { g: targets.mass.value },
		bound: { g: FINISHED_TOLERANCE.massG },
	},
	{
		id: "butt",
		quantity: mm(targets.butt.value, "bench"),
		bound: mm(FINISHED_TOLERANCE.diameterMm, "bench"),
	},
	{
		id: "tip",
		quantity: mm(targets.tip.value, "bench"),
		bound: mm(FINISHED_TOLERANCE.diameterMm, "bench"),
	},
	{
		id: "balance",
		quantity: mm(targets.balance.value),
		bound: mm(FINISHED_TOLERANCE.balanceMm, "station"),
	},
];

function rulesText({ rules }: BuildContent, reader: Reader): string | null {
	const { say } = reader;
	if (rules.length === 0) return null;
	return say("sheet.checks.rules", {
		rules: rules
			.map(({ rule, ok, source }) =>
				say(ok ? "sheet.checks.kept" : "sheet.checks.broken", {
					rule: ruleLabel(rule, reader),
					source: CITATIONS[source].title,
				}),
			)
			.join("; "),
	});
}
