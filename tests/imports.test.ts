import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

/**
 * Who may import whom under lib/. Everything not listed is refused. A folder may always import
 * itself.
 */
const GROUND = ["units", "numerics", "reference"];
const DOMAIN = [
	...GROUND,
	"player",
	"stance",
	"cue",
	"mechanics",
	"shot",
	"build",
	"price",
	"trial",
	"advice",
];
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
	units: [],
	numerics: [],
	reference: ["units"],
	player: GROUND,
	stance: [...GROUND, "player"],
	cue: GROUND,
	mechanics: [...GROUND, "cue"],
	shot: [...GROUND, "cue", "mechanics"],
	build: [...GROUND, "cue"],
	price: [...GROUND, "cue"],
	trial: GROUND,
	advice: DOMAIN,
	workshop: DOMAIN,
	forms: [...DOMAIN, "workshop"],
	words: GROUND,
	present: [...DOMAIN, "workshop", "forms", "words"],
	access: [],
	records: [...DOMAIN, "workshop", "forms", "words", "present", "access"],
	documents: [...DOMAIN, "workshop", "forms", "words", "present"],
};

/** Only the shell may touch the framework, the database or the machine. */
const SHELL = ["records", "documents", "access"];
const SHELL_ONLY =
	/^(react|next|prisma|@prisma|@libsql|server-only|recharts|node:)/;
/** Time, chance, environment and console are passed in. */
const IMPURE =
	/\b(Date\.now\(|new Date\(\)|Math\.random\(|process\.|console\.|performance\.)/;

const sources = readdirSync("lib", { recursive: true, encoding: "utf8" })
	.filter((path) => /\.tsx?$/.test(path))
	.map((path) => ({
		path,
		folder: path.split("/")[0] ?? "",
		text: readFileSync(join("lib", path), "utf8"),
	}));

const importsOf = (text: string): string[] =>
	[...text.matchAll(/(?:from|import)\s*\(?\s*"([^"]+)"/g)].map(
		(match) => match[1] ?? "",
	);

test("the walk sees the library", () => {
	expect(
		new Set(sources.map(({ folder }) => folder)).size,
	).toBeGreaterThanOrEqual(10);
	expect(
		importsOf('import { a } from "@/lib/cue/taper";\nimport "server-only";'),
	).toEqual(["@/lib/cue/taper", "server-only"]);
});

test("every folder of lib is in the table", () => {
	expect(
		sources
			.map(({ folder }) => folder)
			.filter((folder) => !(folder in ALLOWED)),
	).toEqual([]);
});

test("folders of lib import only what the table allows", () => {
	const broken = sources.flatMap(({ path, folder, text }) =>
		importsOf(text)
			.map(
				(name) =>
					/^@\/(?:lib\/)?([^/]+)/.exec(name)?.[1] ??
					(name.startsWith("../") ? name.split("/")[1] : undefined),
			)
			.filter(
				(target): target is string => target !== undefined && target !== folder,
			)
			.filter((target) => !(target === "generated" && folder === "records"))
			.filter((target) => !ALLOWED[folder]?.includes(target))
			.map((target) => `${path} imports ${target}`),
	);
	expect(broken).toEqual([]);
});

test("only the shell imports the framework, the database or the machine", () => {
	const broken = sources
		.filter(({ folder }) => !SHELL.includes(folder))
		.flatMap(({ path, text }) =>
			importsOf(text)
				.filter((name) => SHELL_ONLY.test(name))
				.map((name) => `${path}: ${name}`),
		);
	expect(broken).toEqual([]);
});

test("nothing outside the shell reads clock, chance, environment or console", () => {
	expect(IMPURE.test("const now = Date.now();")).toBe(true);
	const broken = sources
		.filter(({ folder }) => !SHELL.includes(folder))
		.filter(({ text }) =>
			IMPURE.test(text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, "")),
		)
		.map(({ path }) => path);
	expect(broken).toEqual([]);
});

test("there are no grab-bag files and no barrels", () => {
	const names = sources
		.map(({ path }) => path)
		.filter((path) =>
			/(^|\/)(utils?|helpers?|misc|common|index)\.tsx?$/.test(path),
		);
	expect(names).toEqual([]);
});
