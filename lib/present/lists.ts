import type { Reader } from "@/lib/words/reader";

/** "a, b and c" */
export const joinedAnd = (parts: readonly string[], { say }: Reader): string =>
	parts.length < 2
		? parts.join("")
		: say("figure.and", {
				parts: parts.slice(0, -1).join(", "),
				last: String(parts.at(-1)),
			});

/** A sentence's or a label's first letter large. */
export const capital = (text: string): string =>
	text.charAt(0).toUpperCase() + text.slice(1);
