"use client";

import { useEffect, useState } from "react";

const KEY = "who";

/** Who works at this device, remembered there: a name or initials for histories, no sign-in. */
export function useWho(): readonly [string, (name: string) => void] {
	const [who, setWho] = useState("");
	useEffect(() => {
		try {
			setWho(localStorage.getItem(KEY) ?? "");
		} catch {
			// A device that keeps nothing is asked each time.
		}
	}, []);
	const put = (name: string) => {
		setWho(name);
		try {
			localStorage.setItem(KEY, name);
		} catch {
			// As above: the name still goes with what is saved now.
		}
	};
	return [who, put];
}
