import { randomUUID } from "node:crypto";
import { NextRequest } from "next/server";
import { beforeAll, describe, expect, test, vi } from "vitest";
import { GET as getSchema } from "@/app/api/v1/spec.schema.json/route";
import { isThisMachineOnly, originOf } from "@/app/specs/_parts/job-address";
import { GET as getDxf } from "@/app/specs/[number]/[revision]/profile.dxf/route";
import { GET as getPdf } from "@/app/specs/[number]/[revision]/sheet.pdf/route";
import { GET as getJson } from "@/app/specs/[number]/[revision]/spec.json/route";
import { GET as getCsv } from "@/app/specs/[number]/[revision]/stations.csv/route";
import { specJsonSchema } from "@/lib/documents/spec-schema";
import { problemDetailsSchema } from "@/lib/forms/api-shapes";
import { startFitting } from "@/lib/records/fittings/mutations";
import { createPlayer } from "@/lib/records/players/mutations";
import { getSpecRevision } from "@/lib/records/specs/loaders";
import { saveSpec } from "@/lib/records/specs/mutations";
import { temporaryDatabase } from "../support/database";
import { lettersOf, readPdf } from "./support/pdf";
import { specWith, usualSpec } from "./support/specs";

temporaryDatabase();
// Several PDFs are made in one test, each in a second or two where two processors are shared.
vi.setConfig({ testTimeout: 30_000 });

const ROUTES = {
	"sheet.pdf": getPdf,
	"stations.csv": getCsv,
	"spec.json": getJson,
	"profile.dxf": getDxf,
};
type FileName = keyof typeof ROUTES;
const FILES = Object.keys(ROUTES) as FileName[];
const KEPT = FILES.filter((file) => file !== "sheet.pdf");

const ask = (
	file: FileName,
	p: {
		number?: string | number;
		revision?: string | number;
		query?: string;
		headers?: Record<string, string>;
	} = {},
) => {
	const { number = spec.number, revision = 1, query = "", headers } = p;
	return ROUTES[file](
		new NextRequest(
			`http://cues.example.org/specs/${number}/${revision}/${file}${query}`,
			{ headers: { host: "cues.example.org", ...headers } },
		),
		{
			params: Promise.resolve({
				number: String(number),
				revision: String(revision),
			}),
		},
	);
};

let spec = { number: 0, revision: 0 };
const save = async (fittingId: string, content: object) =>
	saveSpec({ fittingId, content, reason: "", requestKey: randomUUID() });
let fittingId = "";

beforeAll(async () => {
	const player = await createPlayer({
		name: "Invented Éva Tester",
		requestKey: randomUUID(),
	});
	const fitting = await startFitting({
		playerId: player.id,
		requestKey: randomUUID(),
	});
	fittingId = fitting.id;
	spec = await save(fittingId, usualSpec());
});

describe("a file of a saved revision", () => {
	test.each([
		[
			"sheet.pdf",
			"application/pdf",
			'inline; filename="job-sheet-1-1.pdf"',
			"%PDF-",
		],
		[
			"stations.csv",
			"text/csv; charset=utf-8; header=present",
			'attachment; filename="stations-1-1.csv"',
			"From the butt end (mm),",
		],
		[
			"spec.json",
			"application/json",
			'attachment; filename="spec-1-1.json"',
			"{\n",
		],
		[
			"profile.dxf",
			"image/vnd.dxf",
			'attachment; filename="profile-1-1.dxf"',
			"999\r\nSPEC 1 REVISION 1",
		],
	] as const)(
		"%s says what it is and what to be called",
		async (file, type, disposition, start) => {
			const response = await ask(file);
			expect(response.status).toBe(200);
			expect(response.headers.get("content-type")).toBe(type);
			expect(response.headers.get("content-disposition")).toBe(disposition);
			expect(response.headers.get("cache-control")).toBe(
				file === "sheet.pdf" ? "private, no-store" : "private, no-cache",
			);
			expect((await response.text()).startsWith(start)).toBe(true);
		},
	);

	test.each(KEPT)("%s is not sent again while it is the same", async (file) => {
		const first = await ask(file);
		const etag = first.headers.get("etag") ?? "";
		expect(etag).toMatch(/^"[0-9a-f]{32}"$/);
		for (const given of [etag, `W/${etag}`, `"other", ${etag}`, "*"]) {
			const again = await ask(file, { headers: { "if-none-match": given } });
			expect(again.status, given).toBe(304);
			expect(again.headers.get("etag")).toBe(etag);
			expect(await again.text()).toBe("");
		}
		const other = await ask(file, {
			headers: { "if-none-match": '"other"' },
		});
		expect(other.status).toBe(200);
	});

	test("the JSON is the stored content, with its digest and this request's address", async () => {
		const saved = await getSpecRevision(spec.number, 1);
		const body = await (
			await ask("spec.json", {
				headers: {
					"x-forwarded-host": "Bench.example.org:8443",
					"x-forwarded-proto": "https",
				},
			})
		).json();
		expect(body.spec).toEqual(saved?.content);
		expect(body.contentSha256).toBe(saved?.contentSha256);
		expect(body.address).toBe("https://bench.example.org:8443/specs/1/1");
		expect(JSON.stringify(body)).not.toContain("Tester");
	});
});

describe("what cannot be answered", () => {
	const problem = async (response: Response, status: number) => {
		expect(response.status).toBe(status);
		expect(response.headers.get("content-type")).toBe(
			"application/problem+json",
		);
		expect(response.headers.get("cache-control")).toBe("no-store");
		return problemDetailsSchema.parse(await response.json());
	};

	test.each(
		FILES.flatMap((file) =>
			(
				[
					["99", "1"],
					["1", "99"],
					["0", "1"],
					["-1", "1"],
					["1.5", "1"],
					["01", "1"],
					["abc", "1"],
					["1", ""],
					["1", "01"],
					["1", "1e0"],
					["1", " 1"],
					["99999999999999999999", "1"],
				] as const
			).map(([number, revision]) => [file, number, revision] as const),
		),
	)("%s of %s/%s is 404", async (file, number, revision) => {
		const { type } = await problem(await ask(file, { number, revision }), 404);
		expect(type).toBe("/problems/not-found");
	});

	test.each([
		["sheet.pdf", "?paper=a3", "paper", "not-a-choice"],
		["sheet.pdf", "?units=inches", "units", "not-a-choice"],
		["sheet.pdf", "?paper=a4&paper=letter", "paper", "not-a-choice"],
		["sheet.pdf", "?papper=a4", "", "unknown-field"],
		["stations.csv", "?units=metric", "", "unknown-field"],
		["spec.json", "?x=", "", "unknown-field"],
		["profile.dxf", "?units=trade", "", "unknown-field"],
	] as const)("%s%s is 400 and says why", async (file, query, field, code) => {
		const { errors } = await problem(await ask(file, { query }), 400);
		expect(errors[0]).toMatchObject({ field, code });
	});

	test.each(["a b", "evil.example.org/path", 'x"y', "a:b:c", ""])(
		"a request for the host %j is 400: the code must lead somewhere",
		async (host) => {
			const { type } = await problem(
				await ask("sheet.pdf", { headers: { host } }),
				400,
			);
			expect(type).toBe("/problems/no-host");
		},
	);
});

describe("the PDF", () => {
	const letters = async (response: Response) =>
		(await readPdf(new Uint8Array(await response.arrayBuffer())))
			.map((page) => page.letters)
			.join("");

	test("comes in the units of the address, else of the cookie, else metric", async () => {
		const lengthMm = usualSpec().figures.length.value;
		const metricFirst = lettersOf(
			`${Math.round(lengthMm)} mm${lengthMm / 25.4}`,
		).slice(0, 8);
		for (const [query, cookie, isMetric] of [
			["", "", true],
			["", "units=trade", false],
			["", "units=nonsense", true],
			["?units=metric", "units=trade", true],
			["?units=trade", "units=metric", false],
		] as const)
			expect(
				(
					await letters(await ask("sheet.pdf", { query, headers: { cookie } }))
				).includes(metricFirst),
				`${query} ${cookie}`,
			).toBe(isMetric);
	});

	test("comes on the paper of the address", async () => {
		const [page] = await readPdf(
			new Uint8Array(
				await (
					await ask("sheet.pdf", { query: "?paper=letter" })
				).arrayBuffer(),
			),
		);
		expect(page?.widthPt).toBe(612);
	});

	test("once replaced, says so, whatever a browser has kept", async () => {
		expect(await letters(await ask("sheet.pdf"))).not.toContain("REPLACED");
		await save(fittingId, specWith({}, 550));
		const after = await ask("sheet.pdf", { headers: { "if-none-match": "*" } });
		expect(after.status).toBe(200);
		expect(await letters(after)).toContain("REPLACEDbyrevision2");
	});
});

describe("the schema's address", () => {
	test("answers with the schema the exports name", async () => {
		const response = getSchema();
		expect(response.headers.get("content-type")).toBe(
			"application/schema+json",
		);
		expect(await response.json()).toEqual(
			JSON.parse(JSON.stringify(specJsonSchema())),
		);
	});
});

describe("where the app was reached", () => {
	test.each([
		[{ host: "127.0.0.1:3000" }, "http://127.0.0.1:3000"],
		[{ host: "[::1]:3000" }, "http://[::1]:3000"],
		[
			{
				host: "inner:3000",
				"x-forwarded-host": "cues.example.org, inner",
				"x-forwarded-proto": "https, http",
			},
			"https://cues.example.org",
		],
		[{ host: "a", "x-forwarded-proto": "javascript" }, "http://a"],
		[{}, null],
		[{ host: "a/b" }, null],
		[{ host: `${"a".repeat(300)}.org` }, null],
	])("%j is %s", (headers, origin) => {
		expect(originOf(new Headers(headers as Record<string, string>))).toBe(
			origin,
		);
	});
	test.each([
		["http://127.0.0.1:3000", true],
		["http://localhost", true],
		["http://[::1]:80", true],
		["http://192.168.1.4:3000", false],
		["https://cues.example.org", false],
	])("%s serves this machine only: %s", (origin, isOnly) => {
		expect(isThisMachineOnly(origin)).toBe(isOnly);
	});
});
