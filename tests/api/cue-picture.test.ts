import { describe, expect, test } from "vitest";
import { GET, POST } from "@/app/api/v1/cue/picture/route";
import { problemDetailsSchema } from "@/lib/forms/api-shapes";

const cue = {
	lengthMm: 1473,
	buttDiameterMm: 29,
	tipDiameterMm: 9.5,
	shaftWood: "white-ash",
	buttWood: "gaboon-ebony",
};
const flat = Object.fromEntries(
	Object.entries(cue).map(([name, value]) => [name, String(value)]),
);
const get = (more: Record<string, string> = {}) =>
	GET(
		new Request(
			`http://localhost/api/v1/cue/picture?${new URLSearchParams({ ...flat, ...more })}`,
		),
	);
const post = (body: unknown) =>
	POST(
		new Request("http://localhost/", {
			method: "POST",
			body: JSON.stringify(body),
		}),
	);
const sizeOf = async (response: Response) => {
	expect(response.status).toBe(200);
	expect(response.headers.get("content-type")).toBe("image/png");
	const file = Buffer.from(await response.arrayBuffer());
	expect(file.subarray(1, 4).toString()).toBe("PNG");
	return {
		widthPx: file.readUInt32BE(16),
		heightPx: file.readUInt32BE(20),
		file,
	};
};

describe("the picture as a file", () => {
	test("query and body give the same file", async () => {
		const asked = { part: "butt", angleDeg: 40, widthPx: 800, unrolled: false };
		const fromQuery = await sizeOf(
			await get({
				part: "butt",
				angleDeg: "40",
				widthPx: "800",
				unrolled: "false",
			}),
		);
		const fromBody = await sizeOf(await post({ cue, ...asked }));
		expect(fromQuery.file.equals(fromBody.file)).toBe(true);
		expect(fromQuery.widthPx).toBe(800);
	});
	test("to scale, the height is the butt's share of the length", async () => {
		const { widthPx, heightPx } = await sizeOf(
			await get({ stretch: "1", widthPx: "1473" }),
		);
		expect([widthPx, heightPx]).toEqual([1473, 31]);
	});
	test("views, turns, inks, rings and weight each change the file", async () => {
		const { file } = await sizeOf(await get());
		const changes: readonly Record<string, string>[] = [
			{ part: "front" },
			{ unrolled: "true" },
			{ angleDeg: "45" },
			{ ink: "grey" },
			{ grain: "{}" },
			{ buttWood: "olive" },
			{ splice: "machine-four-point" },
		];
		for (const change of changes)
			expect(
				(await sizeOf(await get(change))).file.equals(file),
				JSON.stringify(change),
			).toBe(false);
	});
});

describe("refusals name field, value and bound", () => {
	test.each([
		[{ lengthMm: "99" }, 400, "/cue/lengthMm", 99],
		[{ lengthMm: "long" }, 400, "/cue/lengthMm", "long"],
		[{ widthPx: "9999" }, 400, "/widthPx", 9999],
		[{ angleDeg: "1e9" }, 400, "/angleDeg", 1e9],
		[{ buttWood: "plastic" }, 400, "/cue/buttWood", "plastic"],
		[
			{ grain: '{"shaft":{"ringSpacingMm":0}}' },
			400,
			"/grain/shaft/ringSpacingMm",
			0,
		],
	] as const)("%j", async (change, status, pointer, value) => {
		const response = await get(change as Record<string, string>);
		expect(response.status).toBe(status);
		const { errors } = problemDetailsSchema.parse(await response.json());
		expect(errors[0]).toMatchObject({ pointer, value });
	});
	test("a name nobody knows is not ignored", async () => {
		const response = await get({ colour: "red" });
		expect(response.status).toBe(400);
		expect(await response.text()).toContain("colour");
	});
	test("a weight the wood cannot have, and a picture too high, are refused by the models", async () => {
		const light = await get({ wantedMassG: "301" });
		expect(light.status).toBe(422);
		expect(await light.text()).toContain("weight-below-natural");
		const high = await get({
			part: "butt",
			splice: "plain",
			stretch: "12",
			widthPx: "3200",
		});
		expect(high.status).toBe(422);
		expect(
			problemDetailsSchema.parse(await high.json()).errors[0],
		).toMatchObject({
			field: "heightPx",
			max: 1600,
		});
	});
	test.each([[null], [3], [[]], [{ cue: null }]])(
		"%j is refused, not thrown",
		async (body) => {
			expect((await post(body)).status).toBe(400);
		},
	);
});
