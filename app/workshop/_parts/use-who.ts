"use client";

import { useEffect, useState } from "react";
import { NAME_COOKIE, recalled, remember } from "./bench-choices";

/** Who works at this device, remembered there: a name or initials for histories, no sign-in. */
export function useWho(): readonly [string, (name: string) => void] {
	const [who, setWho] = useState("");
	useEffect(() => {
		const kept = document.cookie
			.split("; ")
			.find((one) => one.startsWith(`${NAME_COOKIE}=`));
		setWho(recalled(kept?.slice(NAME_COOKIE.length + 1)));
	}, []);
	const put = (name: string) => {
		setWho(name);
		remember(NAME_COOKIE, name);
	};
	return [who, put];
}
