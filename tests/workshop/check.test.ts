import { describe, expect, test } from "vitest";
import { must } from "@/lib/numerics/outcome";
import {
	billetsOf,
	checkRefusals,
	type DecidedCheck,
	densityOfBillet,
	openFindings,
} from "@/lib/workshop/check";
import { evidenceOf } from "@/lib/workshop/check-evidence";
import {
	decideRefusals,
	woodsOf,
	writeRefusals,
} from "@/lib/workshop/check-rules";
import { JOB_STATES } from "@/lib/workshop/job-state";
import { tableDensity, woodBand } from "@/lib/workshop/wood-evidence";
import { checkContent, decided } from "./support/checks";
import { askedContent } from "./support/jobs";

const { build } = askedContent();
const massG = build.targets.mass.value;
const codes = (
	checks: readonly DecidedCheck[],
	to: "checked" | "handed-over" = "checked",
) => checkRefusals({ to, build, checks }).map(({ code }) => code);

describe("a cue out of tolerance", () => {
	test("is held back until somebody decides, before checking and before handing over", () => {
		const heavy = decided("finished", { massG: massG + 12 });
		expect(codes([heavy])).toEqual(["check-undecided"]);
		expect(codes([heavy], "handed-over")).toEqual(["check-undecided"]);
		expect(codes([{ ...heavy, decision: "accept" }])).toEqual([]);
		expect(codes([{ ...heavy, decision: "rework" }])).toEqual([
			"rework-not-measured",
		]);
		expect(codes([{ ...heavy, decision: "tell-customer" }])).toEqual([
			"customer-not-told",
		]);
	});

	test("no other move is held back", () => {
		const heavy = decided("finished", { massG: massG + 12 });
		const free = JOB_STATES.filter(
			(to) => checkRefusals({ to, build, checks: [heavy] }).length === 0,
		);
		expect(free).toEqual(
			JOB_STATES.filter((to) => to !== "checked" && to !== "handed-over"),
		);
	});

	test("measuring the figure again settles it; an empty or other check does not", () => {
		const heavy = decided("finished", { massG: massG + 12 });
		expect(codes([decided("finished", { massG }), heavy])).toEqual([]);
		expect(
			codes([
				decided("finished", { lengthMm: build.targets.length.value }),
				heavy,
			]),
		).toEqual(["check-undecided"]);
		// A weight of a blank is compared with nothing.
		expect(codes([decided("blank-glued", { massG }), heavy])).toEqual([
			"check-undecided",
		]);
	});

	test("a later slip opens it again", () => {
		expect(
			codes([
				decided("finished", { massG: massG - 12 }),
				decided("finished", { massG }, null),
			]),
		).toEqual(["check-undecided"]);
	});

	test("a decision is for the figures of its own check", () => {
		expect(
			codes([
				decided("finished", { massG: massG - 12 }),
				decided("finished", { massG: massG - 12 }, "accept"),
			]),
		).toEqual(["check-undecided"]);
	});

	test("a revision that says what it came to settles it", () => {
		const heavy = decided("finished", { massG: massG + 12 }, "tell-customer");
		const revised = {
			...build,
			targets: {
				...build.targets,
				mass: { ...build.targets.mass, value: massG + 12 },
			},
		};
		expect(
			checkRefusals({ to: "checked", build: revised, checks: [heavy] }),
		).toEqual([]);
	});

	test("each diameter stands for itself", () => {
		const [first, second] = build.stations;
		if (first === undefined || second === undefined)
			throw new Error("a sheet has stations");
		const thick = (station: typeof first) => ({
			stationMm: station.stationMm,
			diameterMm: station.diameterMm + 0.5,
		});
		const open = openFindings(build, [
			decided("finished", {
				stations: [{ ...thick(first), diameterMm: first.diameterMm }],
			}),
			decided("finished", { stations: [thick(first), thick(second)] }),
		]);
		expect(open.map(({ stationMm }) => stationMm)).toEqual([second.stationMm]);
	});
});

describe("deciding", () => {
	const heavy = decided("finished", { massG: massG + 12 });
	const refused = (change: Partial<Parameters<typeof decideRefusals>[0]>) =>
		decideRefusals({
			build,
			checks: [heavy],
			checkId: heavy.id,
			decision: "accept",
			note: "Customer likes it heavy.",
			...change,
		}).map(({ code }) => code);

	test("accepting needs a reason, the others do not", () => {
		expect(refused({})).toEqual([]);
		expect(refused({ note: "" })).toEqual(["note-missing"]);
		expect(refused({ note: "", decision: "rework" })).toEqual([]);
	});

	test("nothing is left to decide once it was measured again", () => {
		expect(
			refused({ checks: [decided("finished", { massG }), heavy] }),
		).toEqual(["nothing-to-decide"]);
	});
});

describe("writing a check", () => {
	const refused = (change: Partial<Parameters<typeof writeRefusals>[0]>) =>
		writeRefusals({
			state: "on-the-bench",
			build,
			stage: "finished",
			content: checkContent({ massG }),
			...change,
		});

	test("is for cues on the bench, waiting or checked", () => {
		expect(
			JOB_STATES.filter((state) => refused({ state }).length === 0),
		).toEqual(["on-the-bench", "waiting", "checked"]);
	});

	test("names every reading out of range with its bounds", () => {
		expect(
			refused({
				content: checkContent({ massG: 20, lengthMm: 9000, metalMassG: -1 }),
			}),
		).toMatchObject([
			{ code: "out-of-range", field: "lengthMm", value: 9000, max: 2200 },
			{ code: "out-of-range", field: "massG", value: 20, min: 100 },
			{ code: "out-of-range", field: "metalMassG", value: -1, min: 0 },
		]);
	});

	test("the woods of a cue are those its design is made of", () => {
		expect(woodsOf(build)).toEqual(["white-ash", "gaboon-ebony"]);
	});
});

describe("billets", () => {
	const billet = {
		wood: "white-ash",
		massG: 1200,
		lengthMm: 1500,
		widthMm: 34,
		thicknessMm: 34,
		moisturePct: 12,
	} as const;

	test("1200 g of 1500 × 34 × 34 mm are 692 kg/m³; surer with a meter", () => {
		const metered = must(densityOfBillet(billet));
		expect(metered.kgM3).toBeCloseTo(692.04, 2);
		const unmetered = must(densityOfBillet({ ...billet, moisturePct: null }));
		expect(unmetered.kgM3).toBeCloseTo(metered.kgM3, 9);
		expect(unmetered.sd).toBeGreaterThan(metered.sd);
	});

	test("of each wood the last weighed counts", () => {
		const densities = must(
			billetsOf([
				{
					content: checkContent({}, { billets: [{ ...billet, massG: 1250 }] }),
				},
				{ content: checkContent({}, { billets: [billet] }) },
			]),
		);
		expect(densities["white-ash"]?.kgM3).toBeCloseTo(720.88, 2);
	});
});

describe("evidence", () => {
	const bandOf = (wood: Parameters<typeof tableDensity>[0]) =>
		woodBand(tableDensity(wood), []);
	const evidence = (figures: { massG: number; balanceFromButtMm: number }) =>
		must(
			evidenceOf({
				build,
				checks: [{ stage: "before-weighting", content: checkContent(figures) }],
				bandOf,
			}),
		);
	const natural = {
		massG: build.naturalMassG.value,
		balanceFromButtMm: build.naturalBalanceFromButtMm.value,
	};

	test("a cue as predicted says what was expected, without doubt", () => {
		const { said, doubt } = evidence(natural);
		expect(doubt).toBeNull();
		for (const { wood, kgM3 } of said)
			expect(kgM3).toBeCloseTo(tableDensity(wood).kgM3, 6);
	});

	test("a wild cue says something too, and is doubted", () => {
		const { said, doubt } = evidence({
			...natural,
			massG: natural.massG + 150,
		});
		expect(doubt?.code).toBe("not-this-build");
		expect(said.length).toBeGreaterThan(0);
	});
});
