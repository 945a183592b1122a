import { type Outcome, type Refusal, refuse } from "@/lib/numerics/outcome";
import { checkRefusals } from "@/lib/workshop/check";
import { evidenceOf } from "@/lib/workshop/check-evidence";
import {
	decideRefusals,
	restoreRefusals,
	writeRefusals,
} from "@/lib/workshop/check-rules";
import { weighedCue } from "@/lib/workshop/weighed-cue";
import { tableDensity, woodBand } from "@/lib/workshop/wood-evidence";
import { checkContent, decided } from "../workshop/support/checks";
import { askedContent } from "../workshop/support/jobs";

const { build } = askedContent();
const heavy = { massG: build.targets.mass.value + 20 };

const held = (decision: Parameters<typeof decided>[2]) =>
	refuse(
		...checkRefusals({
			to: "checked",
			build,
			checks: [decided("finished", heavy, decision)],
		}),
	);
const written = (change: Partial<Parameters<typeof writeRefusals>[0]>) =>
	refuse(
		...writeRefusals({
			state: "on-the-bench",
			build,
			stage: "finished",
			content: checkContent(heavy),
			...change,
		}),
	);
const decide = (figures: { massG: number }) => {
	const check = decided("finished", figures);
	return refuse(
		...decideRefusals({
			build,
			checks: [check],
			checkId: check.id,
			decision: "accept",
			note: "",
		}),
	);
};
/** A doubt as the refusal it would be. */
const doubted = (massG: number, spreadKgM3: number): Outcome<unknown> => {
	const evidence = evidenceOf({
		build,
		checks: [
			{
				stage: "before-weighting",
				content: checkContent({
					massG,
					balanceFromButtMm: build.naturalBalanceFromButtMm.value,
				}),
			},
		],
		bandOf: (wood) => woodBand({ ...tableDensity(wood), sd: spreadKgM3 }, []),
	});
	if (!evidence.ok) return evidence;
	const { doubt } = evidence.value;
	return refuse(...(doubt === null ? [] : [doubt satisfies Refusal]));
};

/** One way to each refusal of a check on the bench, a decision on it, or the evidence in it. */
export const CHECKS_REFUSED: Readonly<Record<string, () => Outcome<unknown>>> =
	{
		"check-undecided": () => held(null),
		"rework-not-measured": () => held("rework"),
		"customer-not-told": () => held("tell-customer"),
		"not-on-the-bench": () => written({ state: "asked" }),
		"nothing-read": () => written({ content: checkContent({}) }),
		"no-such-station": () =>
			written({
				content: checkContent({
					stations: [{ stationMm: 3, diameterMm: 20 }],
				}),
			}),
		"wood-not-in-cue": () =>
			written({
				content: checkContent(
					{},
					{
						billets: [
							{
								wood: "snakewood",
								massG: 900,
								lengthMm: 500,
								widthMm: 40,
								thicknessMm: 40,
								moisturePct: null,
							},
						],
					},
				),
			}),
		"nothing-to-decide": () => decide({ massG: build.targets.mass.value }),
		"note-missing": () => decide(heavy),
		"other-evidence-stands": () =>
			refuse(...restoreRefusals({ wood: "gaboon-ebony", isOtherOfJob: true })),
		"stage-tells-nothing": () => weighedCue(build, "turned", {}),
		"not-weighed": () => weighedCue(build, "finished", {}),
		"metal-not-told": () =>
			weighedCue(build, "finished", { massG: 540, balanceFromButtMm: 430 }),
		"metal-not-planned": () =>
			weighedCue(
				{ ...build, addedWeight: { ...build.addedWeight, metalMassG: 0 } },
				"finished",
				{ massG: 540, balanceFromButtMm: 430, metalMassG: 20 },
			),
		"says-nothing": () =>
			evidenceOf({
				build: {
					...build,
					design: {
						...build.design,
						densities: {
							"white-ash": { kgM3: 672, sd: 0.001 },
							"gaboon-ebony": { kgM3: 955, sd: 0.001 },
						},
					},
				},
				checks: [
					{
						stage: "before-weighting",
						content: checkContent({
							massG: build.naturalMassG.value,
							balanceFromButtMm: build.naturalBalanceFromButtMm.value,
						}),
					},
				],
				bandOf: (wood) => woodBand(tableDensity(wood), []),
			}),
		"wild-density": () => doubted(build.naturalMassG.value + 40, 3),
	};
