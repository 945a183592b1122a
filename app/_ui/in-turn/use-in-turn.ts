"use client";

import { useEffect, useState } from "react";
import { flushSync } from "react-dom";
import { sameParts } from "./same-parts";
import { Turns } from "./turns";

const turns = new Turns();
if (typeof window !== "undefined")
	window.addEventListener("beforeprint", () => turns.finish());

/**
 * The value to draw a heavy piece from: what it was until the piece's turn comes, parts that have not
 * changed always the same objects. On paper it is always the newest.
 */
export function useInTurn<T>(value: T, isNear: boolean): T {
	const [drawn, setDrawn] = useState(value);
	useEffect(() => {
		const next = sameParts(drawn, value);
		if (Object.is(next, drawn)) return;
		return turns.add({
			isNear,
			// In this very task: left to the scheduler, several pieces would be drawn in one.
			run: () => flushSync(() => setDrawn(() => next)),
		});
	}, [value, drawn, isNear]);
	return drawn;
}
