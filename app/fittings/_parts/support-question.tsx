"use client";

import { useController } from "react-hook-form";
import { ChoiceField } from "@/app/_ui/fields/choice-field";
import { useDesk } from "./desk";
import { HINTS } from "./questions";

const OPTIONS = [
	{ value: "standing", label: "Standing" },
	{ value: "seated", label: "Seated" },
	{ value: "frame", label: "In a standing frame" },
];

/** What holds the player up: one question over two answers, which cannot both be yes. */
export function SupportQuestion() {
	const { control } = useDesk();
	const { field: seated } = useController({ control, name: "seated" });
	const { field: frame } = useController({ control, name: "standingFrame" });
	const value =
		frame.value === "yes"
			? "frame"
			: seated.value === "yes"
				? "seated"
				: seated.value === "no"
					? "standing"
					: "";
	return (
		<ChoiceField
			label="At the table"
			name="support"
			hint={HINTS.seated}
			value={value}
			options={OPTIONS}
			unsure="Not said: standing"
			onChange={(chosen) => {
				seated.onChange(
					chosen === "" ? "" : chosen === "seated" ? "yes" : "no",
				);
				frame.onChange(chosen === "frame" ? "yes" : "");
			}}
		/>
	);
}
