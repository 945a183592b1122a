"use client";

import { useEffect, useState } from "react";

const CHOICE_KEY = "keep-screen-on";

/** `absent`: this browser cannot. `refused`: it will not now, such as with the battery low. */
export type Awake = "on" | "off" | "refused" | "absent";

const isWanted = (): boolean => {
	try {
		return localStorage.getItem(CHOICE_KEY) !== "no";
	} catch {
		// Storage is switched off: the usual choice.
		return true;
	}
};

/** Keeps the screen on while the part stands and is in sight, unless the coach has chosen otherwise. */
export function useAwake(): { awake: Awake; choose: (on: boolean) => void } {
	const [wanted, setWanted] = useState(isWanted);
	const [awake, setAwake] = useState<Awake>(
		"wakeLock" in navigator ? "off" : "absent",
	);

	useEffect(() => {
		if (!wanted || !("wakeLock" in navigator)) return;
		let held: WakeLockSentinel | null = null;
		let isOver = false;
		const hold = async () => {
			// The browser lets go whenever the page is out of sight.
			if (document.visibilityState !== "visible") return;
			if (held !== null && !held.released) return;
			try {
				held = await navigator.wakeLock.request("screen");
				if (isOver) return void held.release();
				setAwake("on");
			} catch {
				if (!isOver) setAwake("refused");
			}
		};
		void hold();
		document.addEventListener("visibilitychange", hold);
		return () => {
			isOver = true;
			document.removeEventListener("visibilitychange", hold);
			void held?.release();
			setAwake((now) => (now === "absent" ? now : "off"));
		};
	}, [wanted]);

	return {
		awake,
		choose: (on) => {
			setWanted(on);
			try {
				localStorage.setItem(CHOICE_KEY, on ? "yes" : "no");
			} catch {
				// Chosen for this visit.
			}
		},
	};
}
