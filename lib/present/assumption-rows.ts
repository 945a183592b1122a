import * as advice from "@/lib/advice/judgement";
import type { CitationId } from "@/lib/reference/citations";
import type { Standing } from "@/lib/reference/estimate";
import * as answers from "@/lib/stance/answers";
import * as stance from "@/lib/stance/assumptions";
import * as trial from "@/lib/trial/assumptions";

/** One assumed number, or choice, of a model. */
export interface Assumption {
	/** What it is of, the widest first, in plain lower-case words: ["shoulder yaw", "side on"]. */
	readonly path: readonly string[];
	readonly value: number | string | readonly (number | string)[];
	readonly sd: number | null;
	readonly unit: string;
	readonly standing: Standing;
	readonly source: CitationId;
}

interface Rest {
	readonly standing: Standing;
	readonly source: CitationId;
}
const JUDGED: Rest = { standing: "assumed", source: "project-judgement" };
const PRACTICE: Rest = {
	standing: "common-practice",
	source: "common-practice",
};

/** What is more than a judgement among the assumptions, by the name it is exported under. */
export const RESTING_ON: Readonly<Record<string, Rest>> = {
	UPPER_ARM_LINK_SHARE: { standing: "derived", source: "ansur-2" },
	FOREARM_LINK_SHARE: { standing: "derived", source: "ansur-2" },
	NECK_SHARES: { standing: "derived", source: "ansur-2" },
	LEG_SHARES: { standing: "derived", source: "winter-2009" },
	CALIBRATION: PRACTICE,
	PRIOR_COUNT: { standing: "published", source: "brown-cai-dasgupta-2001" },
	STEP: PRACTICE,
	USUAL_LENGTHS: PRACTICE,
	BUTT_LIMITS_MM: PRACTICE,
	USUAL_SHAFT: PRACTICE,
	USUAL_LAYOUT: PRACTICE,
	BUDGET_BUILD: PRACTICE,
};

const { ANSWER_SD_MM, ANSWER_BOUNDS } = answers;

const { TRIAL_FIELDS: _names, ...assumedTrial } = trial;

/** The files that hold assumptions, whole: what is added there appears here. */
export const ASSUMED_IN = {
	stance: { ...stance, ANSWER_SD_MM, ANSWER_BOUNDS },
	trial: assumedTrial,
	advice: { ...advice },
} as const;

const UNITS: Readonly<Record<string, string>> = {
	MM: "mm",
	G: "g",
	DEG: "deg",
	IN: "in",
	YEARS: "years",
	"MM PER T": "mm per t",
	"DEG PER T": "deg per t",
	"LOG ODDS": "log-odds",
};
const UNIT = /(?:^| )(MM PER T|DEG PER T|LOG ODDS|MM|DEG|G|IN|YEARS)$/;

/** "SHOULDER_YAW_DEG" and "lengthMm" to plain words and a unit; "side-on" has none. */
function read(key: string): { words: string; unit: string | null } {
	if (!/[A-Z]/.test(key))
		return { words: key.replaceAll("-", " "), unit: null };
	const spaced = (
		/^[A-Z0-9_]+$/.test(key)
			? key.replaceAll("_", " ")
			: key.replace(/([A-Z])/g, " $1").toUpperCase()
	).trim();
	const found = UNIT.exec(spaced)?.[1];
	const words = (found === undefined ? spaced : spaced.replace(UNIT, ""))
		.toLowerCase()
		.trim();
	return { words, unit: found === undefined ? null : (UNITS[found] ?? "") };
}

const isPlain = (value: unknown): value is number | string =>
	typeof value === "number" || typeof value === "string";

const isAssumed = (
	value: object,
): value is { readonly value: number; readonly sd: number } =>
	"value" in value && "sd" in value && Object.keys(value).length === 2;

function rowsOf(p: {
	path: readonly string[];
	value: unknown;
	unit: string;
	rest: Rest;
}): Assumption[] {
	const { path, value, unit, rest } = p;
	const row = { path, unit, sd: null, ...rest };
	if (isPlain(value)) return [{ ...row, value }];
	if (typeof value !== "object" || value === null) return [];
	if (Array.isArray(value)) {
		if (value.every(isPlain)) return [{ ...row, value }];
		return value.flatMap((inner, i) =>
			rowsOf({
				...p,
				path: [...path.slice(0, -1), `${path.at(-1)} ${i + 1}`],
				value: inner,
			}),
		);
	}
	if (isAssumed(value)) return [{ ...row, value: value.value, sd: value.sd }];
	return Object.entries(value).flatMap(([key, inner]) => {
		const { words, unit: own } = read(key);
		return rowsOf({
			...p,
			path: words === "" ? path : [...path, words],
			value: inner,
			unit: own ?? unit,
		});
	});
}

/** Every assumption of one of those files, in its order. */
export const assumptionsIn = (
	file: keyof typeof ASSUMED_IN,
): readonly Assumption[] =>
	Object.entries(ASSUMED_IN[file]).flatMap(([key, value]) => {
		const { words, unit } = read(key);
		return rowsOf({
			path: [words],
			value,
			unit: unit ?? "",
			rest: RESTING_ON[key] ?? JUDGED,
		});
	});
