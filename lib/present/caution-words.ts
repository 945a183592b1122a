import type { MeasureName } from "@/lib/forms/choices";
import type { GameId } from "@/lib/reference/rules";
import type { WoodId } from "@/lib/reference/woods";
import type { Messages, Reader } from "@/lib/words/reader";
import {
	formatAngle,
	formatLength,
	formatLengthBand,
	formatMass,
	formatNumber,
	type LengthKind,
} from "./figures";
import {
	gameName,
	inSentence,
	measureLabel,
	seasonName,
	woodName,
} from "./labels";

export type Facts = Readonly<Record<string, number | string>>;
export type CautionCode = keyof Messages["caution"];

/** What a sentence is given, by the names it has for it. */
type Values = Readonly<Record<string, string>>;

/** The facts of one caution, written out for the reader. */
interface Told {
	readonly mm: (name: string, kind?: LengthKind) => string;
	readonly band: (low: string, high: string, kind?: LengthKind) => string;
	readonly g: (name: string) => string;
	readonly deg: (name: string) => string;
	/** An angle whichever way it goes. */
	readonly lean: (name: string) => string;
	readonly number: (name: string) => number;
	readonly text: (name: string) => string;
	readonly reader: Reader;
}

export const numberIn = (facts: Facts | undefined, name: string): number => {
	const value = facts?.[name];
	if (typeof value !== "number")
		throw new TypeError(`a notice lacks the number ${name}`);
	return value;
};

function telling(facts: Facts | undefined, reader: Reader): Told {
	const number = (name: string) => numberIn(facts, name);
	return {
		reader,
		number,
		text: (name) => String(facts?.[name]),
		mm: (name, kind = "length") => formatLength(number(name), reader, kind),
		band: (low, high, kind = "length") =>
			formatLengthBand({ low: number(low), high: number(high) }, reader, kind),
		g: (name) => formatMass(number(name), reader),
		deg: (name) => formatAngle(number(name), reader, 0),
		lean: (name) => formatAngle(Math.abs(number(name)), reader, 0),
	};
}

const wood = ({ text, reader }: Told, name: string): string =>
	inSentence.wood(text(name) as WoodId, reader);

const seeSomebody = ({ reader }: Told): Values => ({
	seeSomebody: reader.say("notice.seeSomebody"),
});

const none = (): Values => ({});

/** By caution code, what its sentence is given: the sentences are messages of the same codes. */
const VALUES: Readonly<Record<CautionCode, (told: Told) => Values>> = {
	// The player.
	"stature-estimated": none,
	"outside-source-range": ({ text, number, mm, reader }) => {
		const isAge = text("field") === "ageYears";
		const write = (name: string) =>
			isAge ? formatNumber(number(name), reader) : mm(name, "body");
		return {
			of: isAge ? "age" : "height",
			value: write("value"),
			min: write("min"),
			max: write("max"),
		};
	},
	"reading-unexpected": ({ mm, text, reader }) => {
		const measure = text("field").replace(/Mm$/, "") as MeasureName;
		const kind =
			measure === "stature" || measure === "armSpan" ? "body" : "limb";
		return {
			measure: measureLabel(measure, reader),
			value: mm("value", kind),
			expected: mm("expectedMm", kind),
		};
	},
	"grip-circle-assumed": none,
	"single-reading": none,
	"readings-disagree": ({ mm }) => ({
		spread: mm("spreadMm", "gap"),
		agreement: mm("agreementMm", "gap"),
	}),
	"ring-above-largest-grip": ({ mm }) => ({
		circle: mm("circleMm", "diameter"),
		largest: mm("largestMm", "diameter"),
	}),
	// The stance.
	"stance-assumed": none,
	"span-unexpected": ({ mm }) => ({
		span: mm("bridgeToGripMm"),
		expected: mm("expectedMm"),
	}),
	"span-not-reached": ({ mm }) => ({
		span: mm("bridgeToGripMm"),
		reached: mm("reachedMm"),
	}),
	"step-needed": ({ mm }) => ({
		cloth: mm("clothHeightMm"),
		shoulder: mm("shoulderHeightMm"),
		step: mm("stepMm"),
	}),
	"chin-above-cue": ({ mm }) => ({
		wanted: mm("wantedMm"),
		reached: mm("chinAboveCueMm"),
	}),
	"chin-below-cue": ({ mm }) => ({
		wanted: mm("wantedMm"),
		reached: mm("chinAboveCueMm"),
	}),
	"elbow-cannot-rise": none,
	"neck-at-limit": none,
	"forearm-not-upright": none,
	"posture-past-static-limits": (told) => ({
		trunk: told.deg("trunkDeg"),
		head: told.lean("neckDeg"),
		way: told.number("neckDeg") < 0 ? "back" : "forward",
		trunkLimit: told.deg("trunkLimitDeg"),
		...seeSomebody(told),
	}),
	"posture-time-limited": (told) => ({
		trunk: told.deg("trunkDeg"),
		seconds: formatNumber(told.number("longestS"), told.reader),
		...seeSomebody(told),
	}),
	"posture-asymmetric": ({ lean }) => ({ lean: lean("sideBendDeg") }),
	"posture-limits-exclude-juniors": none,
	"stand-up-between-shots": seeSomebody,
	"growth-range-not-promise": none,
	"lengthening-shifts-balance": none,
	"build-guessed": ({ text, reader }) => ({
		parts: text("unknown")
			.split(", ")
			.map((part) =>
				reader.say(
					`notice.buildPart.${part as keyof Messages["notice"]["buildPart"]}`,
				),
			)
			.join(", "),
	}),
	"present-cue-not-explained": none,
	// The figures.
	"length-raised-to-rule": ({ mm, text, reader }) => ({
		wanted: mm("wantedMm"),
		game: gameName(text("gameId") as GameId, reader),
		least: mm("ruleMinMm"),
	}),
	"length-outside-window": ({ mm, band }) => ({
		length: mm("lengthMm"),
		window: band("lowMm", "highMm"),
	}),
	"butt-range-cut-by-bench": ({ band }) => ({
		hand: band("lowMm", "highMm", "diameter"),
		bench: band("benchMinMm", "benchMaxMm", "diameter"),
	}),
	"mass-raised-to-wood": (told) => ({
		wanted: told.g("wantedG"),
		wood: wood(told, "buttWood"),
		natural: told.g("naturalMassG"),
	}),
	"mass-lowered-to-bore": ({ g }) => ({
		wanted: g("wantedG"),
		nearest: g("nearestG"),
	}),
	"balance-outside-usual": ({ mm, band }) => ({
		balance: mm("balanceFromButtMm"),
		usual: band("lowMm", "highMm"),
	}),
	"moisture-outside-change-range": ({ text, number, reader }) => {
		const percent = (name: string, decimals: number) =>
			reader.say("figure.percent", {
				number: formatNumber(number(name), reader, decimals),
			});
		return {
			season: seasonName(text("season"), reader),
			moisture: percent("moisturePct", 1),
			range: reader.say("figure.range", {
				low: formatNumber(number("minPct"), reader),
				high: percent("maxPct", 0),
			}),
		};
	},
	// The bench.
	"natural-above-wanted": ({ g }) => ({ excess: g("excessG") }),
	"bore-meets-glue-lines": ({ mm }) => ({
		bore: mm("boreDiameterMm", "diameter"),
		core: mm("coreHalfWidthMm", "diameter"),
	}),
	"weigh-before-boring": ({ g }) => ({ spread: g("naturalMassSdG") }),
	"lead-handling": none,
	lead: none,
	"wood-dust": none,
	"wood-dust-sensitiser": (told) => ({ wood: wood(told, "wood") }),
	turning: none,
	adhesives: none,
	"protected-wood": ({ text, reader }) => ({
		wood: woodName(text("wood") as WoodId, reader),
		appendix: text("appendix"),
		date: text("dataDate"),
	}),
};

export const isCautionCode = (code: string): code is CautionCode =>
	Object.hasOwn(VALUES, code);

/** What travels beside a result without stopping it, in a sentence or two. */
export const cautionSentence = (
	code: CautionCode,
	facts: Facts | undefined,
	reader: Reader,
): string =>
	reader.say(`caution.${code}`, VALUES[code](telling(facts, reader)));
