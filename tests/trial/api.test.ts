import { describe, expect, test } from "vitest";
import { POST } from "@/app/api/v1/trial/route";
import { problemDetailsSchema } from "@/lib/forms/api-shapes";
import { trialResponseSchema } from "@/lib/forms/api-trial-response";
import { must } from "@/lib/numerics/outcome";
import { answerTrial } from "@/lib/trial/answer";
import type { Shot } from "@/lib/trial/shots";
import { RACK, rackCue } from "./support/rack";

const ask = (body: unknown) =>
	POST(
		new Request("http://localhost/", {
			method: "POST",
			body: JSON.stringify(body),
		}),
	);
const shots: Shot[] = Array.from({ length: 60 }, (_, i) => ({
	cueId: i % 2 === 0 ? "light" : "heavy",
	isPotted: i % 2 === 0 ? i % 10 !== 0 : i % 3 !== 0,
	line: i % 4 === 0 ? ("left" as const) : ("on" as const),
	position: i % 3 === 0 ? ("good" as const) : ("near" as const),
	pair: Math.floor(i / 2),
	round: Math.floor(i / 2),
}));

describe("POST /api/v1/trial", () => {
	test("answers in the described form, with the very numbers the pages compute", async () => {
		const question = { rack: RACK, sessions: [{ shots, isPaired: true }] };
		const response = await ask(question);
		expect(response.status).toBe(200);
		const answer = await response.json();
		trialResponseSchema.parse(answer);
		expect(answer).toEqual(
			JSON.parse(JSON.stringify(must(answerTrial(question)))),
		);
	});
	test("a rack alone is answered with a proposal", async () => {
		const answer = trialResponseSchema.parse(
			await (await ask({ rack: RACK })).json(),
		);
		expect(answer.analyses).toEqual([]);
		expect(answer.proposals.length).toBeGreaterThan(0);
	});
	test("advice as a target moves what is believed", async () => {
		const answer = trialResponseSchema.parse(
			await (
				await ask({ rack: RACK, target: { massG: { value: 480, sd: 20 } } })
			).json(),
		);
		expect(answer.preference.before.massG).toEqual({
			value: 480,
			sd: 20,
			from: "advice",
		});
	});
});

describe("errors are RFC 9457 problem details", () => {
	const problem = async (body: unknown) => {
		const response = await ask(body);
		expect(response.headers.get("content-type")).toBe(
			"application/problem+json",
		);
		const details = problemDetailsSchema.parse(await response.json());
		expect(details.status).toBe(response.status);
		return details;
	};
	test("a figure out of bounds names field, value and bound", async () => {
		const { status, errors } = await problem({
			rack: [{ ...rackCue("a"), massG: 5000 }, rackCue("b")],
		});
		expect(status).toBe(400);
		expect(errors[0]).toMatchObject({
			pointer: "/rack/0/massG",
			value: 5000,
			max: 850,
		});
	});
	test("a shot with a cue that is not in the rack: 422", async () => {
		const { status, errors } = await problem({
			rack: RACK,
			sessions: [{ shots: [{ cueId: "stray", isPotted: true }] }],
		});
		expect(status).toBe(422);
		expect(errors[0]).toMatchObject({ code: "unknown-cue", value: "stray" });
	});
	test.each([
		null,
		[],
		{},
		{ rack: "all" },
		{
			rack: RACK,
			sessions: [{ shots: [{ cueId: "light", isPotted: "yes" }] }],
		},
		{ rack: RACK, target: { massG: { value: 500, sd: 0 } } },
		{ rack: RACK, seed: 1 },
	])("%j is refused, not thrown", async (body) => {
		expect((await problem(body)).status).toBe(400);
	});
	test("a rack of one, or with none left to try: 422", async () => {
		expect((await problem({ rack: [rackCue("a")] })).status).toBe(422);
		expect(
			(
				await problem({
					rack: [rackCue("a"), { ...rackCue("b"), isAvailable: false }],
				})
			).errors[0],
		).toMatchObject({ code: "rack-too-small", value: 1, min: 2 });
	});
});
