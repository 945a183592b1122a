import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	ONLINE_FIELDS,
	onlineAnswer,
	readOnline,
	settledOnline,
	withOnlineChange,
} from "@/lib/forms/online-cue";
import { onlineAnswersSchema } from "@/lib/forms/online-cue-schema";
import { readHome } from "@/lib/forms/online-measures";
import { usualOnline } from "@/lib/workshop/online-choices";
import { anyChoices, INVENTED_OFFER, usual } from "../workshop/support/online";

const read = (
	answers: Parameters<typeof readOnline>[0],
	system: "metric" | "trade" = "metric",
) => readOnline(answers, INVENTED_OFFER, system);

describe("answers of an online cue", () => {
	test("left out are the workshop's usual of the game that was named", () => {
		expect(read({})).toEqual({ choices: usual(), problems: [] });
		expect(read({ gameId: "american-pool" }).choices).toEqual(
			usualOnline(INVENTED_OFFER, "american-pool"),
		);
		expect(read({ lengthMm: "  " }).choices).toEqual(usual());
	});

	test("are read in the units they name, or in the reader's", () => {
		expect(read({ lengthMm: "58 in", massG: "19 oz" }).choices).toMatchObject({
			lengthMm: 58 * 25.4,
			massG: expect.closeTo(19 * 28.349523125, 9),
		});
		expect(read({ lengthMm: "58" }, "trade").choices.lengthMm).toBe(58 * 25.4);
		expect(read({ buttDiameterMm: "28,5" }).choices.buttDiameterMm).toBe(28.5);
	});

	test("that cannot be read count as left out and say why", () => {
		const { choices, problems } = read({
			lengthMm: "long",
			massG: "2 kg",
			buttWood: "plywood",
			wedgeCount: "4.5",
			isGoingAbroad: "maybe",
		});
		expect(choices).toEqual(usual());
		expect(problems.map(({ field, code }) => [field, code])).toEqual([
			["lengthMm", "not-a-number"],
			["buttWood", "not-a-choice"],
			["wedgeCount", "not-a-choice"],
			["massG", "out-of-range"],
			["isGoingAbroad", "not-a-choice"],
		]);
	});

	test("written from choices and read again are the same choices", () => {
		fc.assert(
			fc.property(anyChoices(INVENTED_OFFER), (choices) => {
				const answers = withOnlineChange({}, choices);
				expect(onlineAnswersSchema.parse(answers)).toEqual(answers);
				for (const system of ["metric", "trade"] as const)
					expect(readOnline(answers, INVENTED_OFFER, system)).toEqual({
						choices,
						problems: [],
					});
			}),
			{ seed: 5 },
		);
	});

	test("after a change are as they were typed but for what changed", () => {
		expect(
			withOnlineChange(
				{ lengthMm: "58 in", massG: "19 oz" },
				{ massG: 535, veneer: null },
			),
		).toEqual({ lengthMm: "58 in", massG: "535 g", veneer: "" });
		expect(onlineAnswer("isGoingAbroad", true)).toBe("yes");
	});

	test("mean for every reader what they meant for who typed them", () => {
		const typed = {
			lengthMm: "58",
			massG: " 19 oz",
			veneerCount: "2",
			tip: "",
		};
		const settled = settledOnline(typed, "trade");
		expect(settled).toEqual({
			lengthMm: "58 in",
			massG: "19 oz",
			veneerCount: "2",
		});
		expect(read(settled).choices).toEqual(read(typed, "trade").choices);
	});

	test("come in with known names and of some length only", () => {
		expect(onlineAnswersSchema.safeParse({ name: "x" }).success).toBe(false);
		expect(onlineAnswersSchema.safeParse({ tip: 4 }).success).toBe(false);
		expect(
			onlineAnswersSchema.safeParse({ tip: "x".repeat(121) }).success,
		).toBe(false);
		expect(ONLINE_FIELDS).toHaveLength(Object.keys(usual()).length);
	});
});

test("measures at home are read in their own units, and what cannot be is left out", () => {
	expect(
		readHome(
			{ statureMm: "175", handLengthMm: "18.5 cm", presentMassG: "heavy" },
			"metric",
		),
	).toEqual({ statureMm: 1750, handLengthMm: 185 });
	expect(readHome({ statureMm: "5 ft 9" }, "trade").statureMm).toBeCloseTo(
		69 * 25.4,
		9,
	);
});
