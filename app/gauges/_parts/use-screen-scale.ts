"use client";

import { useCallback, useMemo, useSyncExternalStore } from "react";
import { z } from "zod";
import { scaleFromCard } from "@/lib/present/gauge-view";

/** CSS pixels a millimetre, as a card was matched, and the zoom it was matched at. Kept on this device. */
const KEY = "screen-scale";
const CHANGED = "screen-scale-changed";

const keptSchema = z.object({
	cardPx: z.number(),
	zoom: z.number().positive(),
});

/** Where the device keeps nothing, the scale lives as long as the page. */
let unkept: string | null = null;

function readKept(): string | null {
	try {
		return localStorage.getItem(KEY) ?? unkept;
	} catch {
		return unkept;
	}
}

const subscribe = (changed: () => void) => {
	const events = ["storage", "resize", CHANGED] as const;
	for (const event of events) window.addEventListener(event, changed);
	window.visualViewport?.addEventListener("resize", changed);
	return () => {
		for (const event of events) window.removeEventListener(event, changed);
		window.visualViewport?.removeEventListener("resize", changed);
	};
};

/** Zoom of the page and of two fingers together: either one changes what a millimetre takes. */
const zoom = (): number =>
	window.devicePixelRatio * (window.visualViewport?.scale ?? 1);

export interface ScreenScale {
	/** Null before a card was matched on this device. */
	readonly pixelsPerMm: number | null;
	/** The page's zoom, or the screen, is another one than when the card was matched. */
	readonly isStale: boolean;
	readonly isKept: boolean;
	readonly keep: (cardLongSidePx: number) => void;
}

export function useScreenScale(): ScreenScale {
	const kept = useSyncExternalStore(subscribe, readKept, () => null);
	const now = useSyncExternalStore(subscribe, zoom, () => 1);
	const read = useMemo(() => parseKept(kept), [kept]);
	const keep = useCallback((cardPx: number) => {
		const text = JSON.stringify({ cardPx, zoom: zoom() });
		unkept = text;
		try {
			localStorage.setItem(KEY, text);
			unkept = null;
		} catch {
			// Storage is full or switched off: `isKept` says so beside the gauge.
		}
		window.dispatchEvent(new Event(CHANGED));
	}, []);
	return {
		pixelsPerMm: read?.pixelsPerMm ?? null,
		isStale: read !== null && Math.abs(read.zoom / now - 1) > 1e-3,
		isKept: unkept === null,
		keep,
	};
}

/** Null for nothing kept, and for anything no card on no screen gives. */
function parseKept(
	text: string | null,
): { pixelsPerMm: number; zoom: number } | null {
	if (text === null) return null;
	try {
		const kept = keptSchema.parse(JSON.parse(text));
		const scale = scaleFromCard(kept.cardPx);
		return scale.ok ? { pixelsPerMm: scale.value, zoom: kept.zoom } : null;
	} catch {
		return null;
	}
}
