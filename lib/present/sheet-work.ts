import type { BilletPick } from "@/lib/build/billet-window";
import { band90 } from "@/lib/reference/estimate";
import type { Reader } from "@/lib/words/reader";
import {
	type BenchStep,
	benchSteps,
	type WaitHours,
	waitingDays,
} from "@/lib/workshop/bench-steps";
import type { BuildContent } from "@/lib/workshop/job-content";
import { billetKgM3, type Stock, type StockWood } from "@/lib/workshop/stock";
import { formatLength, formatNumber } from "./figures";
import { woodName } from "./labels";

/** One wood to pick a billet of. */
export interface PickRow {
	readonly use: string;
	readonly wood: string;
	/** Grade and year rings as they stand at hand, else what the trade looks for. */
	readonly grain: string;
	/** The densities that do, and the billets at hand among them. */
	readonly density: string;
	readonly atHand: string;
}

/** Billets named on a sheet for one wood: more than these a bench looks up. */
const MOST_NAMED = 6;

/** What to look for in each wood, with the billets at hand that have it. */
export function pickRows(
	{ billets }: BuildContent,
	reader: Reader,
	stock: Stock | null,
): PickRow[] {
	const { say } = reader;
	return billets.map((pick) => {
		const entries = (stock?.woods ?? []).filter(
			({ wood }) => wood === pick.wood,
		);
		return {
			use: say(`sheet.woods.${pick.use}`),
			wood: woodName(pick.wood, reader),
			grain: grainText(entries, reader),
			density: windowText(pick, reader),
			atHand: atHandText(pick, entries, reader),
		};
	});
}

function grainText(entries: readonly StockWood[], reader: Reader): string {
	const { say } = reader;
	const known = entries
		.map(({ grade, ringSpacingMm }) =>
			[
				grade === "" ? null : say("sheet.picks.grade", { grade }),
				ringSpacingMm === null
					? null
					: say("sheet.picks.rings", {
							spacing: formatLength(ringSpacingMm, reader, "gap"),
						}),
			]
				.filter((text) => text !== null)
				.join(", "),
		)
		.filter((text) => text !== "");
	return [...new Set([...known, say("sheet.picks.straight")])].join("; ");
}

function windowText(
	{ window, densityKgM3 }: BilletPick,
	reader: Reader,
): string {
	const { say } = reader;
	if (window === null) return say("sheet.picks.byEye");
	const { lowKgM3, highKgM3 } = window;
	const number = (kgM3: number) => formatNumber(kgM3, reader);
	if (lowKgM3 !== null && highKgM3 !== null)
		return say("sheet.picks.window", {
			low: number(Math.ceil(lowKgM3)),
			high: number(Math.floor(highKgM3)),
		});
	if (lowKgM3 !== null)
		return say("sheet.picks.atLeast", { low: number(Math.ceil(lowKgM3)) });
	if (highKgM3 !== null)
		return say("sheet.picks.atMost", { high: number(Math.floor(highKgM3)) });
	const { low, high } = band90(densityKgM3);
	return say("sheet.picks.any", { low: number(low), high: number(high) });
}

function atHandText(
	{ window }: BilletPick,
	entries: readonly StockWood[],
	reader: Reader,
): string {
	if (window === null) return "";
	const billets = entries
		.flatMap((entry) => entry.billets)
		.map((billet) => ({ label: billet.label, kgM3: billetKgM3(billet) }))
		.filter(
			({ kgM3 }) =>
				kgM3 >= (window.lowKgM3 ?? 0) &&
				kgM3 <= (window.highKgM3 ?? Number.POSITIVE_INFINITY),
		)
		.slice(0, MOST_NAMED);
	if (billets.length === 0) return "";
	return reader.say("sheet.picks.atHand", {
		billets: billets
			.map(({ label, kgM3 }) =>
				reader
					.say("sheet.picks.billet", {
						label,
						density: formatNumber(kgM3, reader),
					})
					.trim(),
			)
			.join(", "),
	});
}

export interface StepsView {
	readonly about: string;
	readonly rows: readonly { readonly step: string; readonly wait: string }[];
}

/** The order of the work with its waiting times. */
export function stepsView(
	build: Pick<BuildContent, "design" | "addedWeight">,
	reader: Reader,
): StepsView {
	const { say } = reader;
	const steps = benchSteps(build);
	const [low, high] = waitingDays(steps);
	return {
		about: say("sheet.steps.about", {
			low: formatNumber(Math.ceil(low), reader),
			high: formatNumber(Math.ceil(high), reader),
		}),
		rows: steps.map((step) => ({
			step: stepText(step, reader),
			wait: waitText(step, reader),
		})),
	};
}

function stepText({ id, times }: BenchStep, { say }: Reader): string {
	const step = say(`sheet.steps.one.${id}`);
	return times === 1 ? step : say("sheet.steps.times", { step, times });
}

function waitText({ waitHours, times }: BenchStep, reader: Reader): string {
	if (waitHours === null) return "";
	const wait = spanText(waitHours, reader);
	return times === 1 ? wait : reader.say("sheet.steps.each", { wait });
}

const DAY = 24;

function spanText([from, to]: WaitHours, { say }: Reader): string {
	const isDays = from % DAY === 0 && to % DAY === 0;
	const [low, high] = isDays ? [from / DAY, to / DAY] : [from, to];
	if (low === high)
		return say(isDays ? "sheet.steps.days" : "sheet.steps.hours", { low });
	return say(isDays ? "sheet.steps.daysBand" : "sheet.steps.hoursBand", {
		low,
		high,
	});
}
