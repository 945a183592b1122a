import { formatMoment } from "@/lib/present/moments";
import type { Reader } from "@/lib/words/reader";
import type { Held } from "../actions";

/** Why something was held off, and when to try again. On the device only: it says the device's own time. */
export function heldText(held: Held, reader: Reader): string {
	const { say } = reader;
	switch (held.code) {
		case "too-soon":
			return say("online.send.tooSoon", {
				seconds: Math.ceil(held.waitMs / 1000),
			});
		case "too-many":
			return say("online.send.tooMany", {
				time: formatMoment(new Date(held.tryAgainAt), reader, {
					now: new Date(),
				}),
			});
		case "no-work":
			return say("online.send.noWork");
	}
}
