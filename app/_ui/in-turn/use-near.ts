"use client";

import { useCallback, useEffect, useRef, useState } from "react";

/** Of the window's height: about a turn of the wheel. */
const MARGIN = "25% 0px";

/** Whether an element is in sight or nearly; true until the browser has told, and where it cannot. */
export function useNear(): readonly [
	(element: Element | null) => void,
	boolean,
] {
	const [isNear, setNear] = useState(true);
	const observer = useRef<IntersectionObserver | null>(null);
	const watch = useCallback((element: Element | null) => {
		observer.current?.disconnect();
		observer.current = null;
		if (element === null || typeof IntersectionObserver === "undefined") return;
		observer.current = new IntersectionObserver(
			(entries) => {
				const last = entries.at(-1);
				if (last !== undefined) setNear(last.isIntersecting);
			},
			{ rootMargin: MARGIN },
		);
		observer.current.observe(element);
	}, []);
	useEffect(() => () => observer.current?.disconnect(), []);
	return [watch, isNear];
}
