"use client";

import { useEffect, useState } from "react";
import type { CueChoice } from "@/lib/advice/choice";
import { Superseded } from "./use-search";

/** The picked cue as the worker tells it; text where that failed, null until then. */
export function usePicked(
	place: number | null,
	cueAt: (place: number) => Promise<CueChoice>,
): CueChoice | string | null {
	const [told, setTold] = useState<{
		place: number;
		choice: CueChoice | string;
	} | null>(null);
	useEffect(() => {
		if (place === null) return;
		let isCurrent = true;
		cueAt(place).then(
			(choice) => {
				if (isCurrent) setTold({ place, choice });
			},
			(error: unknown) => {
				if (isCurrent && !(error instanceof Superseded))
					setTold({ place, choice: String(error) });
			},
		);
		return () => {
			isCurrent = false;
		};
	}, [place, cueAt]);
	return told !== null && told.place === place ? told.choice : null;
}
