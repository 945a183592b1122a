import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gripZone } from "@/lib/advice/grip-zone";
import type { GripCircle } from "@/lib/player/hand";

const ring = (value: number, sd = 0.5): GripCircle => ({
	circleMm: { value, sd, standing: "measured", sources: ["measured-here"] },
	readingCount: 3,
	spreadMm: 0,
	cautions: [],
});
const straightCue = {
	lengthMm: 1470,
	tipDiameterMm: 9.5,
	buttDiameterMm: 29.5,
	taperShape: "straight",
} as const;

/** Closed form: a cone is d(s) = tip + (butt − tip)·s/L, and the arc between the pads π(d − C). */
describe("on a straight taper", () => {
	const zone = gripZone({
		grip: ring(27.5),
		gripFromButtMm: 105,
		...straightCue,
	});
	test("diameter and closure at each place", () => {
		for (const [i, fromButtMm] of [55, 105, 155].entries()) {
			const place = zone[i];
			const diameterMm = 9.5 + (20 * (1470 - fromButtMm)) / 1470;
			expect(place?.fromButtMm).toBe(fromButtMm);
			expect(place?.diameterMm).toBeCloseTo(diameterMm, 9);
			expect(place?.closureMm.value).toBeCloseTo(
				Math.PI * (diameterMm - 27.5),
				9,
			);
			expect(place?.closureMm.sd).toBeCloseTo(Math.PI * 0.5, 12);
		}
	});
});

test("a hand at the very end slides back no further than the butt end", () => {
	const [back] = gripZone({
		grip: ring(28),
		gripFromButtMm: 20,
		...straightCue,
	});
	expect(back).toMatchObject({
		place: "back",
		fromButtMm: 0,
		diameterMm: 29.5,
	});
});

test("a guessed ring gives an assumed closure", () => {
	const grip = ring(28);
	const [place] = gripZone({
		...straightCue,
		gripFromButtMm: 100,
		grip: { ...grip, circleMm: { ...grip.circleMm, standing: "assumed" } },
	});
	expect(place?.closureMm.standing).toBe("assumed");
});

test("on every shape the ring closes more the further forward it is", () => {
	fc.assert(
		fc.property(
			fc.constantFrom("straight", "even", "slim-forward", "full-forward"),
			fc.double({ min: 60, max: 500, noNaN: true }),
			fc.double({ min: 20, max: 40, noNaN: true }),
			(taperShape, gripFromButtMm, circleMm) => {
				const [back, usual, forward] = gripZone({
					...straightCue,
					taperShape,
					grip: ring(circleMm),
					gripFromButtMm,
				}).map(({ closureMm }) => closureMm.value);
				expect(back).toBeGreaterThan(usual as number);
				expect(usual).toBeGreaterThan(forward as number);
			},
		),
	);
});
