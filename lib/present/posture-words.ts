import type { Hold, PostureNotice } from "@/lib/stance/posture";
import type { Reader } from "@/lib/words/reader";
import { formatAngle } from "./figures";
import { cautionText } from "./notices";

export interface PostureWords {
	/** How long trunk, head and neck may be held so. */
	readonly holds: readonly string[];
	readonly cautions: readonly string[];
}

/** What the published limits say of holding a pose. */
export function postureWords(
	notice: PostureNotice,
	reader: Reader,
): PostureWords {
	const { say } = reader;
	return {
		holds: [
			holdText(say("pose.number.trunk"), notice.trunk, reader),
			holdText(say("pose.number.head"), notice.head, reader),
			say("pose.hold.neck", {
				angle: formatAngle(Math.abs(notice.neckDeg), reader, 0),
				way: notice.neckDeg < 0 ? "back" : "forward",
				past: notice.neckZone === "past-limit" ? "yes" : "no",
			}),
		],
		cautions: withoutRepeats(
			notice.cautions.map((caution) => cautionText(caution, reader)),
			reader,
		),
	};
}

const holdText = (what: string, hold: Hold, reader: Reader): string =>
	reader.say(`pose.hold.${hold.zone}`, {
		what,
		angle: formatAngle(hold.angleDeg, reader, 0),
		time: minutesText(hold.longestS ?? 0),
	});

/** "1 min 36 s". */
function minutesText(seconds: number): string {
	const whole = Math.floor(seconds);
	const minutes = Math.floor(whole / 60);
	return minutes === 0 ? `${whole} s` : `${minutes} min ${whole % 60} s`;
}

/** A sentence that another one already contains is left out, whom to ask aside. */
function withoutRepeats(texts: readonly string[], { say }: Reader): string[] {
	const whomToAsk = say("notice.seeSomebody");
	const bare = (text: string) =>
		text.includes(whomToAsk)
			? text.slice(0, text.indexOf(whomToAsk)).replace(/\.? $/, "")
			: text;
	return texts.filter(
		(text, index) =>
			!texts.some(
				(other, at) =>
					at !== index &&
					other.toLowerCase().includes(bare(text).toLowerCase()),
			),
	);
}
