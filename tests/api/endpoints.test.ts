import { describe, expect, test } from "vitest";
import { POST as postAdvice } from "@/app/api/v1/advice/route";
import { POST as postCue } from "@/app/api/v1/cue/route";
import { POST as postFit } from "@/app/api/v1/fit/route";
import { POST as postPresentCue } from "@/app/api/v1/present-cue/route";
import { POST as postShot } from "@/app/api/v1/shot/route";
import { recommend } from "@/lib/advice/recommend";
import { fitResponseSchema } from "@/lib/forms/api-fit-response";
import {
	adviceResponseSchema,
	cueResponseSchema,
	presentCueResponseSchema,
	shotResponseSchema,
} from "@/lib/forms/api-responses";
import { problemDetailsSchema } from "@/lib/forms/api-shapes";
import { must } from "@/lib/numerics/outcome";
import { today } from "@/lib/records/settings/loaders";
import { saveSetting } from "@/lib/records/settings/mutations";
import { DEFAULT_SETTINGS } from "@/lib/workshop/default-settings";
import { offerOf } from "@/lib/workshop/settings";
import { temporaryDatabase } from "../support/database";
import { withStature } from "../support/inputs";

temporaryDatabase();

const ask = (post: (request: Request) => Promise<Response>, body: unknown) =>
	post(
		new Request("http://localhost/", {
			method: "POST",
			body: typeof body === "string" ? body : JSON.stringify(body),
		}),
	);
const cue = {
	lengthMm: 1473,
	buttDiameterMm: 29,
	tipDiameterMm: 9.5,
	shaftWood: "white-ash",
	buttWood: "gaboon-ebony",
};

describe("answers have the described form", () => {
	test("cue, unweighted and weighted", async () => {
		const plain = await (await ask(postCue, { cue })).json();
		expect(cueResponseSchema.parse(plain).plan).toBeNull();
		const weighted = cueResponseSchema.parse(
			await (await ask(postCue, { cue, wantedMassG: 520 })).json(),
		);
		expect(weighted.mass.massG.value).toBeCloseTo(520, 6);
	});
	test("a cue on the scale gives its densities, and they give its weight back", async () => {
		const plain = cueResponseSchema.parse(
			await (await ask(postCue, { cue })).json(),
		);
		const massG = plain.mass.massG.value + 12;
		const answer = cueResponseSchema.parse(
			await (
				await ask(postCue, {
					cue,
					measured: {
						massG,
						balanceFromButtMm: plain.mass.balanceFromButtMm.value,
					},
				})
			).json(),
		);
		const again = cueResponseSchema.parse(
			await (
				await ask(postCue, {
					cue: { ...cue, densities: answer.implied?.densities },
				})
			).json(),
		);
		expect(Math.abs(again.mass.massG.value - massG)).toBeLessThan(1);
	});
	test("cue with moisture over the year and grain arrows", async () => {
		const answer = cueResponseSchema.parse(
			await (
				await ask(postCue, {
					cue: {
						...cue,
						splicing: {
							frontWedge: {
								wood: "zebrano",
								veneers: [{ wood: "sugar-maple", thicknessMm: 0.6 }],
							},
						},
					},
					seasons: [
						{
							name: "winter",
							air: { temperatureC: 20, relativeHumidityPct: 35 },
						},
						{
							name: "summer",
							air: { temperatureC: 24, relativeHumidityPct: 65 },
						},
					],
					grain: { ringSpacingMm: 2 },
				})
			).json(),
		);
		expect(answer.year?.massSwingG).toBeGreaterThan(0);
		expect(answer.grain?.front.arrows.length).toBeGreaterThan(0);
		expect(answer.mass.parts.map(({ material }) => material)).toEqual(
			expect.arrayContaining(["zebrano", "sugar-maple"]),
		);
	});
	test("a cue in use, like it but slimmer and a touch longer", async () => {
		const answer = presentCueResponseSchema.parse(
			await (
				await ask(postPresentCue, {
					reading: {
						lengthMm: 1473,
						massG: 510,
						balanceFromButtMm: 430,
						tipDiameterMm: 9.5,
						diameters: [
							{ fromButtMm: 0, diameterMm: 29.5 },
							{ fromButtMm: 300, diameterMm: 25.3 },
							{ fromButtMm: 700, diameterMm: 19 },
						],
						gripFromButtMm: 110,
					},
					change: { buttDiameterMm: 28.5, lengthMm: 1486 },
				})
			).json(),
		);
		expect(answer.likeMine?.variants.length).toBeGreaterThan(0);
		expect(answer.fit.inertiaAboutGripKgM2?.value).toBeGreaterThan(0);
	});
	test("shot", async () => {
		const answer = shotResponseSchema.parse(
			await (await ask(postShot, { cue, cueMassG: 520 })).json(),
		);
		expect(answer.offsets.length).toBeGreaterThan(5);
	});
	test("fit", async () => {
		const body = {
			player: { statureMm: 1780, gripCircleReadingsMm: [29, 29.5] },
			stance: { gameId: "snooker" },
		};
		const answer = fitResponseSchema.parse(
			await (await ask(postFit, body)).json(),
		);
		expect(answer.grip.circleMm.value).toBe(29.25);
	});
	test("fit: each figure with its band and origin, pose, closure and holding times", async () => {
		const answer = fitResponseSchema.parse(
			await (
				await ask(postFit, {
					player: { statureMm: 1780, gripCircleReadingsMm: [27, 28] },
					stance: { gameId: "snooker", glasses: true, handed: "left" },
					cue: { buttDiameterMm: 29.5 },
				})
			).json(),
		);
		const { reach, pose, closure, posture, growth } = answer;
		// Central 90 % of a normal distribution: ± 1.645 sd.
		expect(reach.lengthMm.band.high - reach.lengthMm.value).toBeCloseTo(
			1.645 * reach.lengthMm.sd,
			1,
		);
		expect(pose).toMatchObject({ converged: true, standing: "derived" });
		expect(pose.spanMm).toBeCloseTo(reach.bridgeToGripMm.value, 6);
		// A left-handed player's bridge shoulder is on the right of the shot.
		expect(pose.joints.bridgeShoulder?.y).toBeLessThan(0);
		expect(closure.buttDiameterMm).toBe(29.5);
		expect(closure.places.map(({ place }) => place)).toEqual([
			"back",
			"usual",
			"forward",
		]);
		for (const { diameterMm, closureMm } of closure.places)
			expect(closureMm.value).toBeCloseTo(Math.PI * (diameterMm - 27.5), 9);
		expect(posture.cautions.map(({ code }) => code)).toContain(
			"stand-up-between-shots",
		);
		expect(growth).toBeNull();
	});
	test("fit: growth where it is asked for, by date of birth before age", async () => {
		const junior = {
			player: { statureMm: 1386.2, sex: "male", ageYears: 9 },
			growth: { onDate: "2026-01-12", bornOn: "2016-01-12" },
		};
		const { growth, posture } = fitResponseSchema.parse(
			await (await ask(postFit, junior)).json(),
		);
		expect(growth?.ageYears).toBeCloseTo(10, 1);
		// CDC 2000: the median boy at exactly 10 years is 138.62 cm.
		expect(growth?.percentiles[0]?.percentile).toBeCloseTo(50, 0);
		expect(growth?.plan.steps.map(({ months }) => months)).toEqual([
			0, 6, 12, 24, 36,
		]);
		expect(growth?.plan.remeasureOn).toBe("2026-07-12");
		expect(posture.cautions.map(({ code }) => code)).toContain(
			"posture-limits-exclude-juniors",
		);
	});
	test.each([
		[{ player: { statureMm: 1400 }, growth: { onDate: "2026-01-12" } }, 422],
		[{ player: { ageYears: 10 }, growth: { onDate: "2026-01-12" } }, 422],
		[
			{
				player: { statureMm: 1780, ageYears: 40 },
				growth: { onDate: "2026-01-12" },
			},
			422,
		],
		[{ player: {}, growth: { onDate: "soon" } }, 400],
		[{ stance: { gameId: "snooker", seated: true, standingFrame: true } }, 422],
	])("fit refuses %j", async (body, status) => {
		const response = await ask(postFit, body);
		expect(response.status).toBe(status);
		problemDetailsSchema.parse(await response.json());
	});
	test("advice, the very figures the pages compute", async () => {
		const answer = await (
			await ask(postAdvice, { player: { statureMm: 1750 } })
		).json();
		adviceResponseSchema.parse(answer);
		const workshop = offerOf(DEFAULT_SETTINGS);
		expect(answer).toEqual(
			JSON.parse(
				JSON.stringify(must(recommend({ ...withStature(1750), workshop }))),
			),
		);
	});
	test("advice with the workshop's settings, or with those in the body", async () => {
		const { prices } = DEFAULT_SETTINGS;
		const saved = await saveSetting({
			kind: "prices",
			content: { ...prices, basis: "workshop", currency: "CHF" },
			editedFrom: 0,
			validFrom: today(),
			by: "Bench",
			requestKey: crypto.randomUUID(),
		});
		expect(saved.ok).toBe(true);
		const currencyOf = async (body: object) =>
			(await (await ask(postAdvice, body)).json()).search.options[0].price
				.currency;
		expect(await currencyOf({})).toBe("CHF");
		const workshop = offerOf(DEFAULT_SETTINGS);
		expect(await currencyOf({ workshop })).toBe("GBP");
	});
	test("an empty object is a fitting with nothing said", async () => {
		expect((await ask(postAdvice, {})).status).toBe(200);
	});
});

describe("errors are RFC 9457 problem details", () => {
	const problem = async (response: Response) => {
		expect(response.headers.get("content-type")).toBe(
			"application/problem+json",
		);
		const details = problemDetailsSchema.parse(await response.json());
		expect(details.status).toBe(response.status);
		return details;
	};
	test("not JSON", async () => {
		expect((await problem(await ask(postAdvice, "{"))).type).toBe(
			"/problems/not-json",
		);
		expect((await problem(await ask(postAdvice, ""))).status).toBe(400);
	});
	test("too large", async () => {
		expect(
			(await problem(await ask(postAdvice, `"${"x".repeat(70_000)}"`))).status,
		).toBe(413);
	});
	test("out of range: field, value and bound", async () => {
		const { errors } = await problem(
			await ask(postCue, { cue: { ...cue, lengthMm: 99 } }),
		);
		expect(errors[0]).toMatchObject({
			pointer: "/cue/lengthMm",
			value: 99,
			min: 900,
		});
	});
	test("well formed but impossible: 422 with the model's refusal", async () => {
		const { status, errors } = await problem(
			await ask(postCue, { cue, wantedMassG: 301 }),
		);
		expect(status).toBe(422);
		expect(errors[0]).toMatchObject({
			code: "weight-below-natural",
			field: "wantedMassG",
			value: 301,
		});
	});
	test.each([
		null,
		3,
		"text",
		[],
		{ player: null },
		{ wishes: { massG: "500" } },
		{ stance: { gameId: 1 } },
	])("%j is refused, not thrown", async (body) => {
		expect((await problem(await ask(postAdvice, body))).status).toBe(400);
	});
});
