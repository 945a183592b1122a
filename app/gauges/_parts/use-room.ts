"use client";

import { type RefObject, useEffect, useRef, useState } from "react";

/** Width an element has, in CSS pixels, as it changes; a small phone's before the first measuring. */
export function useRoom(): {
	readonly ref: RefObject<HTMLDivElement | null>;
	readonly roomPx: number;
} {
	const ref = useRef<HTMLDivElement>(null);
	const [roomPx, setRoomPx] = useState(288);
	useEffect(() => {
		const element = ref.current;
		if (element === null) return;
		const observer = new ResizeObserver(([entry]) => {
			if (entry !== undefined) setRoomPx(entry.contentRect.width);
		});
		observer.observe(element);
		return () => observer.disconnect();
	}, []);
	return { ref, roomPx };
}
