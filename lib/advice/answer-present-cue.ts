import { fitPresentCue, type PresentCueFit } from "@/lib/cue/present-cue";
import type { PresentCue } from "@/lib/cue/present-reading";
import { accept, type Outcome } from "@/lib/numerics/outcome";
import {
	type LikeMine,
	type LikeMineChange,
	likeMineBut,
} from "./like-mine-advice";

export interface PresentCueAnswer {
	readonly fit: PresentCueFit;
	/** "Like mine, but…": null where no change was asked. */
	readonly likeMine: LikeMine | null;
}

/** Inertia and stiffness bands of a cue in use, and the nearest cue with something changed. */
export function answerPresentCue({
	reading,
	change,
}: {
	reading: PresentCue & { readonly gripFromButtMm: number };
	change?: LikeMineChange;
}): Outcome<PresentCueAnswer> {
	const fit = fitPresentCue(reading);
	if (!fit.ok) return fit;
	if (change === undefined) return accept({ fit: fit.value, likeMine: null });
	const likeMine = likeMineBut({ reading, change });
	return likeMine.ok
		? accept({ fit: fit.value, likeMine: likeMine.value })
		: likeMine;
}
