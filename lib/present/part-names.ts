import type { Reader } from "@/lib/words/reader";
import { capital } from "./lists";
import { sayOr } from "./say-or";

const VENEER = / veneer$/;

/** A part of a cue by its name in the design, as it stands alone; an unknown one as it is. */
export function cuePartName(part: string, reader: Reader): string {
	const wedge = part.replace(VENEER, "");
	const name = sayOr(
		`cuePart.${wedge}`,
		sayOr(`sheet.splice.part.${wedge}`, wedge, reader),
		reader,
	);
	return capital(
		VENEER.test(part)
			? reader.say("sheet.splice.veneer", { part: name })
			: name,
	);
}
