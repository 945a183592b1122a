import type { OnlineAnswers } from "@/lib/forms/online-cue";
import { ONLINE_FIELDS } from "@/lib/forms/online-cue";
import { band90 } from "@/lib/reference/estimate";
import { GAMES } from "@/lib/reference/rules";
import type { Reader } from "@/lib/words/reader";
import type { OnlineCue } from "@/lib/workshop/online";
import type { OnlineChange } from "@/lib/workshop/online-changes";
import type {
	OnlineChoices,
	OnlineField,
	OnlineOffer,
} from "@/lib/workshop/online-choices";
import { isBearing } from "@/lib/workshop/online-choices";
import type { Suggestion } from "@/lib/workshop/online-measures";
import type { Remedy, Way } from "@/lib/workshop/online-nearest";
import type { Outlook } from "@/lib/workshop/online-outlook";
import { formatDay, formatShortDay } from "./dates";
import {
	formatLength,
	formatLengthBand,
	formatMass,
	formatMassBand,
} from "./figures";
import { gameName } from "./labels";
import { joinedAnd } from "./lists";
import {
	type Currency,
	formatAmountBand,
	formatAmountDifference,
} from "./money";
import { findingText } from "./online-findings";
import { lengthKindOf, onlineLabel, onlineValue } from "./online-names";

/** One of the four figures that follow a cue about. `value` is "open" where it cannot be told. */
export interface OnlineFact {
	readonly id: "weight" | "balance" | "price" | "ready";
	readonly label: string;
	readonly value: string;
	/** The same where there is little room. */
	readonly short: string;
	/** Where nine in ten lie, or what the figure is made of; null where there is nothing to add. */
	readonly note: string | null;
	/** Where nine in ten lie, without a word; null for figures that are bands or days themselves. */
	readonly shortNote: string | null;
}

export const moneyOf = ({ workshop }: OnlineOffer): Currency =>
	workshop.priceList;

/** Weight, balance, price and the day it is ready, as they stand. */
export function onlineFacts(
	cue: OnlineCue,
	money: Currency,
	reader: Reader,
): readonly OnlineFact[] {
	return factsOf(cue, money, reader).map((fact) => ({
		...fact,
		short:
			fact.id === "ready" && cue.leadTime !== null
				? formatShortDay(cue.leadTime.dueOn, reader)
				: fact.value,
	}));
}

function factsOf(
	cue: OnlineCue,
	money: Currency,
	reader: Reader,
): readonly Omit<OnlineFact, "short">[] {
	const { say } = reader;
	const { massG, balanceFromButtMm, naturalMassG, price, leadTime } = cue;
	const unknown = say("online.figure.unknown");
	const addedG =
		massG === null || naturalMassG === null
			? 0
			: massG.value - naturalMassG.value;
	const band = (text: string) => say("online.figure.band", { band: text });
	return [
		{
			id: "weight",
			label: say("online.figure.weight"),
			value: massG === null ? unknown : formatMass(massG.value, reader),
			shortNote: massG && formatMassBand(band90(massG), reader),
			note:
				massG === null || naturalMassG === null
					? null
					: [
							band(formatMassBand(band90(massG), reader)),
							...(addedG > 1
								? [
										say("online.figure.natural", {
											natural: formatMass(naturalMassG.value, reader),
											added: formatMass(addedG, reader),
										}),
									]
								: []),
						].join("; "),
		},
		{
			id: "balance",
			label: say("online.figure.balance"),
			value:
				balanceFromButtMm === null
					? unknown
					: formatLength(balanceFromButtMm.value, reader),
			shortNote:
				balanceFromButtMm &&
				formatLengthBand(band90(balanceFromButtMm), reader),
			note:
				balanceFromButtMm === null
					? null
					: band(formatLengthBand(band90(balanceFromButtMm), reader)),
		},
		{
			id: "price",
			label: say("online.figure.price"),
			value: price === null ? unknown : formatAmountBand(price, money, reader),
			shortNote: null,
			note: null,
		},
		{
			id: "ready",
			label: say("online.figure.ready"),
			value: leadTime === null ? unknown : formatDay(leadTime.dueOn, reader),
			shortNote: null,
			note:
				leadTime === null
					? null
					: say("online.figure.days", {
							days: Math.ceil(leadTime.benchDays),
							queue:
								leadTime.queueDays > 0
									? say("online.dearer.days", {
											days: Math.ceil(leadTime.queueDays),
										})
									: "none",
						}),
		},
	];
}

/** The parts of a change, "weight to 535 g and splice to plain butt". */
function changeParts(change: OnlineChange, reader: Reader): string {
	const { say } = reader;
	const parts = (
		Object.entries(change) as [OnlineField, OnlineChoices[OnlineField]][]
	).map(([name, value]) => {
		const field = say(`online.fieldIn.${name}`);
		if (value !== null)
			return say("online.way.part", {
				field,
				value: onlineValue(name, value, reader, "inside"),
			});
		return LEFT_OPEN.includes(name)
			? say("online.way.leave", { field })
			: say("online.way.without", { field });
	});
	return joinedAnd(parts, reader);
}

/** Choices that are never without: empty they are the workshop's. */
const LEFT_OPEN: readonly OnlineField[] = [
	"massG",
	"balanceFromButtMm",
	"jointFromButtMm",
	"pointsFromButtMm",
];

/** A way out as a button, and what it would come to. */
export interface WayView {
	readonly label: string;
	readonly after: string;
	readonly done: string;
	readonly change: OnlineChange;
}

export interface RemedyView {
	/** Null where none was found. */
	readonly nearest: WayView | null;
	readonly keeping: WayView | null;
}

export function remedyView(
	{ field, nearest, keeping }: Remedy,
	now: OnlineCue,
	money: Currency,
	reader: Reader,
): RemedyView {
	const view = (way: Way, label: (parts: string) => string): WayView => {
		const parts = changeParts(way.change, reader);
		return {
			label: label(parts),
			after: afterText(way.after, now, money, reader),
			done: reader.say("online.way.done", { parts }),
			change: way.change,
		};
	};
	return {
		nearest:
			nearest &&
			view(nearest, (parts) => reader.say("online.way.set", { parts })),
		keeping:
			keeping &&
			view(keeping, (parts) =>
				reader.say("online.way.keep", {
					field: reader.say(`online.fieldIn.${field}`),
					parts,
				}),
			),
	};
}

/** Weights are proposed in whole steps of this, in g. */
const PROPOSED_STEP_G = 10;

/** Where a weight left open falls outside what the game is used to: says so, and offers the middle of it. */
export function usualWeightView(
	{ choices, massG }: Pick<OnlineCue, "choices" | "massG">,
	reader: Reader,
): (Omit<WayView, "after"> & { readonly text: string }) | null {
	if (massG === null || choices.massG !== null) return null;
	const [low, high] = GAMES[choices.gameId].usual.massG;
	if (massG.value >= low && massG.value <= high) return null;
	const middle = (low + high) / 2;
	const change = {
		massG: PROPOSED_STEP_G * Math.round(middle / PROPOSED_STEP_G),
	};
	const parts = changeParts(change, reader);
	return {
		text: reader.say("online.unusualWeight", {
			mass: formatMass(massG.value, reader),
			game: gameName(choices.gameId, reader),
			band: formatMassBand({ low, high }, reader),
		}),
		label: reader.say("online.way.set", { parts }),
		done: reader.say("online.way.done", { parts }),
		change,
	};
}

/** What the cue would be after a change; empty where its shape still cannot be made. */
function afterText(
	after: OnlineCue,
	now: OnlineCue,
	money: Currency,
	reader: Reader,
): string {
	const { massG, balanceFromButtMm, price, leadTime } = after;
	if (massG === null || balanceFromButtMm === null) return "";
	const told = {
		mass: formatMass(massG.value, reader),
		balance: formatLength(balanceFromButtMm.value, reader),
	};
	if (price === null || leadTime === null)
		return reader.say("online.way.afterOpen", told);
	const moreMinor =
		now.price === null ? 0 : price.totalMinor - now.price.totalMinor;
	return reader.say("online.way.after", {
		...told,
		price: formatAmountBand(price, money, reader),
		difference:
			moreMinor === 0
				? ""
				: ` (${formatAmountDifference(moreMinor, money, reader)})`,
		day: formatDay(leadTime.dueOn, reader),
	});
}

/** What to say beside an option: what it costs more or less, or why it does not go with the rest. */
export function outlookText(
	{ refused, moreMinor }: Pick<Outlook, "refused" | "moreMinor">,
	money: Currency,
	reader: Reader,
): string | null {
	if (refused !== null)
		return reader.say("online.option.refused", {
			reason: findingText(refused, money, reader),
		});
	return moreMinor === null || moreMinor === 0
		? null
		: reader.say("online.option.more", {
				amount: formatAmountDifference(moreMinor, money, reader),
			});
}

/** A figure that measures at home point to. */
export function suggestionView(
	{ field, figure }: Suggestion,
	reader: Reader,
): { readonly text: string; readonly take: string } {
	const value = onlineValue(field, figure.value, reader);
	return {
		text: reader.say("online.home.suggestion", {
			field: onlineLabel(field, reader),
			value,
			band:
				field === "massG"
					? formatMassBand(figure.band, reader)
					: formatLengthBand(figure.band, reader, lengthKindOf(field)),
		}),
		take: reader.say("online.home.take", { value }),
	};
}

export interface OnlineRow {
	readonly field: OnlineField;
	readonly label: string;
	readonly value: string;
	/** Left to the workshop. */
	readonly isUsual: boolean;
}

/** Everything that bears on the cue as it was chosen, for who only looks at it. */
export const onlineRows = (
	choices: OnlineChoices,
	answers: OnlineAnswers,
	reader: Reader,
): readonly OnlineRow[] =>
	ONLINE_FIELDS.filter((field) => isBearing(field, choices)).flatMap(
		(field): OnlineRow[] => {
			const value = choices[field];
			return value === null
				? []
				: [
						{
							field,
							label: onlineLabel(field, reader),
							value: onlineValue(field, value, reader),
							isUsual: !answers[field]?.trim(),
						},
					];
		},
	);
