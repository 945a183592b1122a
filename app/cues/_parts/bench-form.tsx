"use client";

import { useReader } from "@/app/_ui/preferences/reader";
import { Section, Stack } from "@/app/_ui/section";
import type { BenchFieldName } from "@/lib/forms/cue-bench";
import type { Messages } from "@/lib/words/reader";
import { BenchQuestion } from "./bench-question";
import styles from "./cues.module.css";

const FIRST: readonly BenchFieldName[] = [
	"game",
	"length",
	"butt",
	"tip",
	"taper",
	"shaftWood",
	"buttWood",
	"splice",
	"layout",
	"mass",
];

const MORE: readonly {
	readonly group: keyof Messages["cues"]["group"];
	readonly names: readonly BenchFieldName[];
}[] = [
	{
		group: "splice",
		names: [
			"points",
			"core",
			"veneerWood",
			"betweenWood",
			"frontWedgeWood",
			"joint",
			"jointMetal",
			"endPiece",
			"ferrule",
			"dome",
		],
	},
	{
		group: "grain",
		names: ["rings", "tilt", "sightTurn", "arrowSpacing"],
	},
	{
		group: "year",
		names: [
			"place",
			"dryTemperature",
			"dryHumidity",
			"dampTemperature",
			"dampHumidity",
		],
	},
	{ group: "hold", names: ["balance", "grip"] },
];

/** Every choice; what is seldom touched folds away. */
export function BenchForm() {
	const { say } = useReader();
	return (
		<Section title={say("cues.choose")} lead={say("cues.chooseLead")} card>
			<Stack>
				{FIRST.map((name) => (
					<BenchQuestion key={name} name={name} />
				))}
				{MORE.map(({ group, names }) => (
					<details className={styles.more} key={group}>
						<summary>{say(`cues.group.${group}`)}</summary>
						<Stack>
							{names.map((name) => (
								<BenchQuestion key={name} name={name} />
							))}
						</Stack>
					</details>
				))}
			</Stack>
		</Section>
	);
}
