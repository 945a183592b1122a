"use client";

import { Button } from "./button";
import { useReader } from "./preferences/reader";

export function PrintButton() {
	const { say } = useReader();
	return (
		<Button look="main" onClick={() => window.print()}>
			{say("part.print")}
		</Button>
	);
}
