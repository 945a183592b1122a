"use client";

import { useCallback, useEffect, useRef, useState } from "react";

/** Narrower than this nothing is drawn; wider ones are scaled up. */
const LEAST_PX = 240;
const MOST_PX = 1600;

/** The room an element has, in whole CSS pixels; `before` until the browser has told. */
export function useWidth(
	before: number,
): readonly [(element: HTMLElement | null) => void, number] {
	const [widthPx, setWidthPx] = useState(before);
	const observer = useRef<ResizeObserver | null>(null);
	const watch = useCallback((element: HTMLElement | null) => {
		observer.current?.disconnect();
		observer.current = null;
		if (element === null) return;
		const take = (width: number) => {
			// Nothing to draw in while hidden.
			if (width === 0) return;
			setWidthPx(Math.min(MOST_PX, Math.max(LEAST_PX, Math.round(width))));
		};
		// Before anything heavy is drawn for a width that is not so.
		take(element.getBoundingClientRect().width);
		observer.current = new ResizeObserver(([entry]) => {
			if (entry) take(entry.contentRect.width);
		});
		observer.current.observe(element);
	}, []);
	useEffect(() => () => observer.current?.disconnect(), []);
	return [watch, widthPx];
}
