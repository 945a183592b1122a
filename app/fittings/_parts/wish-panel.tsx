"use client";

import { useController } from "react-hook-form";
import { SliderField } from "@/app/_ui/fields/slider-field";
import { Section, Stack } from "@/app/_ui/section";
import type { Advice } from "@/lib/advice/advise";
import type { FieldName } from "@/lib/forms/fields";
import type { TextFieldName } from "@/lib/forms/fitting";
import { fieldLabel } from "@/lib/present/labels";
import { formatFigureBand } from "@/lib/present/reasons";
import { band90 } from "@/lib/reference/estimate";
import { useDesk } from "./desk";
import styles from "./fitting.module.css";
import { Question } from "./question";
import { quantitySpec } from "./questions";

const CHOICES: readonly FieldName[] = [
	"wishButtWood",
	"wishSplice",
	"wishLayout",
];
const MORE: readonly FieldName[] = [
	"wishShaftWood",
	"wishTaper",
	"wishFerrule",
	"budget",
	"level",
];

/** The wishes beside the recommendation: move one and every figure and chart follows. */
export function WishPanel({ advice }: { advice: Advice }) {
	const { reader } = useDesk();
	const { say } = reader;
	const natural = band90(advice.build.natural.massG);
	const window = advice.reach.lengthWindowMm;
	const range = advice.butt.rangeMm;
	return (
		<Section
			title={say("fitting.wishes.title")}
			lead={say("fitting.wishes.lead")}
			card
		>
			<Stack>
				<Wish
					name="wishMass"
					resting={advice.mass.value}
					zone={{
						...natural,
						label: say("fitting.wishes.natural", {
							band: formatFigureBand("mass", natural, reader),
						}),
					}}
				/>
				<Wish
					name="wishLength"
					resting={advice.length.value}
					zone={{
						...window,
						label: say("fitting.wishes.window", {
							band: formatFigureBand("length", window, reader),
						}),
					}}
				/>
				<Wish
					name="wishButt"
					resting={advice.butt.figure.value}
					zone={{
						...range,
						label: say("fitting.wishes.closes", {
							band: formatFigureBand("butt", range, reader),
						}),
					}}
				/>
				<Wish name="wishTip" resting={advice.tip.value} />
				<Question name="wishClosure" />
				{CHOICES.map((name) => (
					<Question key={name} name={name} />
				))}
				<details className={styles.more}>
					<summary>{say("fitting.wishes.more")}</summary>
					<Stack>
						{MORE.map((name) => (
							<Question key={name} name={name} />
						))}
					</Stack>
				</details>
			</Stack>
		</Section>
	);
}

function Wish({
	name,
	resting,
	zone,
}: {
	name: TextFieldName;
	resting: number;
	zone?: { low: number; high: number; label: string };
}) {
	const { control, reader } = useDesk();
	const { field } = useController({ control, name });
	return (
		<SliderField
			label={fieldLabel(name, reader)}
			name={name}
			value={field.value}
			onChange={field.onChange}
			spec={quantitySpec(name)}
			resting={resting}
			zone={zone}
		/>
	);
}
