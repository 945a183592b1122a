"use client";

import { useState } from "react";
import { sameParts } from "./same-parts";

/** The value, every part that says the same as last time the very object of last time. */
export function useSame<T>(value: T): T {
	const [before, setBefore] = useState(value);
	const same = sameParts(before, value);
	if (!Object.is(same, before)) setBefore(() => same);
	return same;
}
