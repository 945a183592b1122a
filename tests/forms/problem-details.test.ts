import { describe, expect, test } from "vitest";
import { adviceBodySchema } from "@/lib/forms/api-requests";
import { invalidRequest, refused } from "@/lib/forms/problem-details";

const problemOf = (body: unknown) => {
	const parsed = adviceBodySchema.safeParse(body);
	if (parsed.success) throw new Error("expected the body to be refused");
	return invalidRequest(parsed.error.issues, body);
};

/** Members of a problem details object: RFC 9457, section 3.1. */
describe("problem details", () => {
	test("name field, value and bound of a number out of range, with a JSON Pointer", () => {
		const problem = problemOf({ player: { statureMm: 12 } });
		expect(problem).toMatchObject({
			type: "/problems/invalid-request",
			status: 400,
		});
		expect(problem.errors).toEqual([
			{
				pointer: "/player/statureMm",
				field: "player.statureMm",
				code: "out-of-range",
				value: 12,
				min: 900,
			},
		]);
		expect(problem.detail).toContain("player.statureMm");
		expect(problem.detail).toContain("12");
		expect(problem.detail).toContain("900");
	});

	test("name an unknown member instead of dropping it", () => {
		expect(problemOf({ player: { heightMm: 1780 } }).errors[0]).toMatchObject({
			code: "unknown-field",
			facts: { fields: "heightMm" },
		});
	});

	test("name the choices where one was missed", () => {
		expect(problemOf({ stance: { gameId: "golf" } }).errors[0]).toMatchObject({
			code: "not-a-choice",
			value: "golf",
			facts: { choices: expect.stringContaining("snooker") },
		});
	});

	test("carry a model's refusal as it is", () => {
		const refusal = {
			code: "out-of-range",
			field: "lengthMm",
			value: 3,
			min: 700,
			max: 1700,
		};
		expect(refused([refusal])).toMatchObject({
			status: 422,
			errors: [refusal],
		});
	});
});
