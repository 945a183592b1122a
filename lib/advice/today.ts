import { accept, type Outcome } from "@/lib/numerics/outcome";
import { recommend } from "./recommend";
import { type SpecContent, specFrom } from "./spec";
import { MODEL_VERSION } from "./version";

/**
 * What the models of today would make of a stored spec's answers; null while they are the models it
 * was made with. The stored spec stays what it is.
 */
export function specToday(
	stored: SpecContent,
	modelVersion = MODEL_VERSION,
): Outcome<SpecContent | null> {
	if (stored.modelVersion === modelVersion) return accept(null);
	const advice = recommend(stored.input);
	return advice.ok ? specFrom(advice.value, advice.value.search) : advice;
}
