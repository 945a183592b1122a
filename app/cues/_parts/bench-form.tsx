"use client";

import { Section, Stack } from "@/app/_ui/section";
import type { BenchFieldName } from "@/lib/forms/cue-bench";
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
	readonly title: string;
	readonly names: readonly BenchFieldName[];
}[] = [
	{
		title: "Splice, joint and ferrule",
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
		title: "Grain and sighting",
		names: ["rings", "tilt", "sightTurn", "arrowSpacing"],
	},
	{
		title: "Air through the year",
		names: [
			"place",
			"dryTemperature",
			"dryHumidity",
			"dampTemperature",
			"dampHumidity",
		],
	},
	{ title: "Balance and hold", names: ["balance", "grip"] },
];

/** Every choice; what is seldom touched folds away. */
export function BenchForm() {
	return (
		<Section title="Choose" lead="Slide, type or leave open." card>
			<Stack>
				{FIRST.map((name) => (
					<BenchQuestion key={name} name={name} />
				))}
				{MORE.map(({ title, names }) => (
					<details className={styles.more} key={title}>
						<summary>{title}</summary>
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
