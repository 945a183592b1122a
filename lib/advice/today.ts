import { accept, type Outcome } from "@/lib/numerics/outcome";
import type { FittingInput } from "./input";
import { recommend } from "./recommend";
import { type SpecContent, specFrom } from "./spec";
import { MODEL_VERSION } from "./version";
import type { WorkshopOffer } from "./workshop-offer";

/**
 * What the models of today would make of a stored spec's answers, with the workshop's catalogue,
 * densities and prices as they were; null while they are the models it was made with. The stored spec
 * stays what it is.
 */
export function specToday(
	stored: SpecContent,
	modelVersion = MODEL_VERSION,
): Outcome<SpecContent | null> {
	return stored.modelVersion === modelVersion
		? accept(null)
		: specAnew(stored.input);
}

/**
 * Whether a spec was saved under other settings of the workshop than those. One that names none was
 * worked out for the invented workshop.
 */
export const isOfOtherSettings = (
	{ input }: Pick<SpecContent, "input">,
	workshop: WorkshopOffer,
): boolean =>
	input.workshop === undefined
		? !isInvented(workshop)
		: !isSame(input.workshop, workshop);

const isInvented = ({ basis, priceList, densities = {} }: WorkshopOffer) =>
	basis === "invented" &&
	priceList.basis === "invented" &&
	Object.keys(densities).length === 0;

/** The same answers by today's models and a workshop's present catalogue, densities and prices. */
export const specInSettings = (
	{ input }: Pick<SpecContent, "input">,
	workshop: WorkshopOffer,
): Outcome<SpecContent> => specAnew({ ...input, workshop });

function specAnew(input: FittingInput): Outcome<SpecContent> {
	const advice = recommend(input);
	return advice.ok ? specFrom(advice.value, advice.value.search) : advice;
}

/** Equal as JSON, whatever the order of members; a member left out is one undefined. */
export function isSame(a: unknown, b: unknown): boolean {
	if (typeof a !== "object" || typeof b !== "object" || !a || !b)
		return Object.is(a, b);
	if (Array.isArray(a) !== Array.isArray(b)) return false;
	const names = new Set([...Object.keys(a), ...Object.keys(b)]);
	return [...names].every((name) =>
		isSame(
			(a as Record<string, unknown>)[name],
			(b as Record<string, unknown>)[name],
		),
	);
}
