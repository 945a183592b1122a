"use client";

import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { type Beginning, begin, beginning } from "./begin";
import type { KeptFitting } from "./records";

/** Where a fitting that has no number yet is found. */
export const deviceAddress = (fittingId: string, step: string): string =>
	`/coaching?fitting=${encodeURIComponent(fittingId)}&step=${step}`;

/** Whether pages open here though no server answers: only where the worker is in charge of this page. */
const opensOffline = (): boolean =>
	"serviceWorker" in navigator && navigator.serviceWorker.controller !== null;

/** Begins a fitting and goes to its first step. Pressed twice for the same it begins one. */
export function useBegin(firstStep: string): {
	start: (wanted: Beginning) => Promise<void>;
	isBusy: boolean;
	/** Why one stays where one is: nobody took it, or it waits here and cannot be opened without a network. */
	stays: "failed" | "waits" | null;
} {
	const router = useRouter();
	const [isBusy, setBusy] = useState(false);
	const [stays, setStays] = useState<"failed" | "waits" | null>(null);
	const last = useRef<{ wanted: string; fitting: Promise<KeptFitting> } | null>(
		null,
	);
	const start = async (asked: Beginning) => {
		const wanted = JSON.stringify(asked);
		if (last.current?.wanted !== wanted)
			last.current = { wanted, fitting: beginning(asked) };
		setBusy(true);
		setStays(null);
		const begun = await begin(await last.current.fitting);
		if (begun.kind === "numbered")
			return router.push(`/fittings/${begun.number}/${firstStep}`);
		// Not by the router: it would ask the server for the page first.
		if (begun.kind === "on-device" && opensOffline())
			return window.location.assign(deviceAddress(begun.id, firstStep));
		setStays(begun.kind === "nowhere" ? "failed" : "waits");
		setBusy(false);
	};
	return { start, isBusy, stays };
}
