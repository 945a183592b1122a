import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type Literal, literalsOf } from "./support/literals";

const SHOWN = /^(app|lib\/present|lib\/documents)\/.*\.tsx?$/;
const BENCH = "tests/words/support/shown.tsx";

/** Files whose text no person reads on a page or on paper, and why. */
const FOR_MACHINES: readonly (readonly [RegExp, string])[] = [
	[/^app\/(api|device)\//, "answers of the open API and of the sync, English"],
	[
		/^lib\/documents\/(openapi|settings-files|.*-schema)[^/]*\.ts$/,
		"published descriptions",
	],
	[/^lib\/documents\/(profile-)?dxf\.ts$/, "notes inside a drawing file"],
	[/^app\/.*\/(profile\.dxf|stations\.csv)\/route\.ts$/, "the same files"],
	[/^app\/specs\/_parts\/download\.ts$/, "problem details of the downloads"],
	[/^app\/workshop\/_parts\/job-download\.ts$/, "the same for a job’s"],
	[/^app\/worker\.js\//, "a script"],
	[/^app\/gauges\/ring\/route\.ts$/, "answers to an address nobody links"],
];

/** Texts that are a machine's own, and why. */
const MACHINE_TEXTS: readonly (readonly [RegExp, string])[] = [
	[/^(private|public), /, "cache-control"],
	[/^(inline|attachment); filename=/, "content-disposition"],
	[/^(text|application)\/[\w.+-]+; /, "content-type"],
	[/^\(prefers-/, "media query"],
	[/^@page /, "CSS"],
	[/^[\d.]+pt solid /, "style of a line on paper"],
	[/^(Atkinson( ext)?|Noto \{\})$/, "names of type faces"],
	[/^(header|main|input)\b[^.]*$/, "CSS selectors of the page’s own parts"],
	[/^(Enter|Escape|Home|End|Tab)$/, "names of keys"],
	[/^(Android|Windows|Macintosh|Linux)$/, "names of systems, as browsers say"],
	[/^Worker$/, "name of a type"],
	[/^Letter$/, "a size of paper"],
	[/^Unacceptable$/, "name of an error"],
];

/** Single literals with a reason of their own, by file and text. */
const ALLOWED: readonly (readonly [string, string, string])[] = [
	["lib/present/figures.ts", "a {} in mm", "goes into a thrown error"],
	["lib/present/figures.ts", "a {} mass in g", "goes into a thrown error"],
	["lib/present/posture-words.ts", "{} min {} s", "units of the SI"],
	["lib/present/assumption-rows.ts", "mm per t", "key of a unit’s message"],
	["lib/present/assumption-rows.ts", "deg per t", "key of a unit’s message"],
	["lib/present/setting-rows/lead-times.ts", "closed {}", "key of a row"],
	["lib/present/setting-rows/stock.ts", "billet {}", "key of a row"],
	["app/_device/tools.ts", "answers cannot be kept on this device:", "console"],
	[
		"app/_device/use-worker.ts",
		"pages will not open without a network:",
		"console",
	],
];

const allowedBy = ({ file, text }: Literal): string | undefined =>
	FOR_MACHINES.find(([path]) => path.test(file))?.[1] ??
	MACHINE_TEXTS.find(([pattern]) => pattern.test(text))?.[1] ??
	ALLOWED.find(([path, exact]) => path === file && exact === text)?.[2];

const { files, literals } = literalsOf(
	(file) => SHOWN.test(file) || file === BENCH,
);

test("the check sees what it is for, and nothing else", () => {
	expect(files.length).toBeGreaterThan(300);
	const source = readFileSync(BENCH, "utf8").split("\n");
	const marked = source.flatMap((text, i) =>
		/seen/i.test(text) ? [i + 1] : [],
	);
	expect(
		literals.filter(({ file }) => file === BENCH).map(({ line }) => line),
	).toEqual(marked);
});

test("no sentence and no label stands in a page, a view or a document: each is a message", () => {
	expect(
		literals
			.filter((one) => one.file !== BENCH && allowedBy(one) === undefined)
			.map(({ file, line, text }) => `${file}:${line}: ${text}`),
	).toEqual([]);
});

test("every exception is still needed", () => {
	const shown = literals.filter(({ file }) => file !== BENCH);
	const needed = <Rule extends readonly unknown[]>(
		rules: readonly Rule[],
		fits: (rule: Rule, one: Literal) => boolean,
	) => rules.filter((rule) => !shown.some((one) => fits(rule, one)));
	expect(needed(FOR_MACHINES, ([path], { file }) => path.test(file))).toEqual(
		[],
	);
	expect(
		needed(MACHINE_TEXTS, ([pattern], { text }) => pattern.test(text)),
	).toEqual([]);
	expect(
		needed(
			ALLOWED,
			([path, exact], { file, text }) => path === file && exact === text,
		),
	).toEqual([]);
});
