import { describe, expect, test } from "vitest";
import { likeMineBut } from "@/lib/advice/like-mine-advice";
import { likeMineView } from "@/lib/present/like-mine-view";
import { METRIC } from "@/tests/support/readers";

/** An invented cue, an even taper between 9.5 and 29 mm. */
const READING = {
	lengthMm: 1460,
	massG: 510,
	balanceFromButtMm: 420,
	tipDiameterMm: 9.5,
	diameters: [0, 0.2, 0.4, 0.6, 0.8].map((share) => ({
		fromButtMm: share * 1460,
		diameterMm: 29 - share * 19.5,
	})),
	gripFromButtMm: 100,
};

function viewOf(change: Parameters<typeof likeMineBut>[0]["change"]) {
	const found = likeMineBut({ reading: READING, change });
	if (!found.ok) throw new Error(JSON.stringify(found.refusals));
	const view = likeMineView(found.value, METRIC);
	if (view === null) throw new Error("no pair");
	return { found: found.value, view };
}

describe("like mine, but…", () => {
	test("what cannot be kept together is named, and only that", () => {
		for (const change of [
			{},
			{ lengthMm: 1560 },
			{ buttDiameterMm: 27 },
			{ massG: 560 },
		]) {
			const { found, view } = viewOf(change);
			if (found.cannotKeep.length === 0)
				expect(view.verdict).toContain("can all be kept");
			else expect(view.verdict).toContain("Not to be kept together");
			for (const [name, label] of [
				["mass", "weight"],
				["balance", "balance point"],
				["inertia", "steadiness"],
				["stiffness", "give of the shaft"],
			] as const)
				if (found.cannotKeep.length > 0)
					expect(view.verdict.includes(label)).toBe(
						found.cannotKeep.includes(name),
					);
			expect(view.rows.filter(({ kept }) => kept !== "kept")).toHaveLength(
				found.cannotKeep.length,
			);
		}
	});
	test("each of the four is shown with what it becomes; the asked weight stands as wanted", () => {
		const { view } = viewOf({ massG: 540 });
		expect(view.rows.map(({ name }) => name)).toEqual([
			"Weight",
			"Balance point",
			"Steadiness about the grip hand",
			"Give of the shaft",
		]);
		expect(view.rows[0]?.now).toBe("540\u00a0g");
		expect(view.bench).toMatch(
			/^(Put .* from the butt end|No metal is added)\.$/,
		);
		for (const text of view.others) expect(text).toMatch(/^Keeping .*\.$/);
	});
});
