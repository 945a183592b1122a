"use client";

import { useController } from "react-hook-form";
import { ChoiceField } from "@/app/_ui/fields/choice-field";
import { useDesk } from "./desk";
import { hintOn } from "./questions";

/** What holds the player up: one question over two answers, which cannot both be yes. */
export function SupportQuestion() {
	const { control, reader } = useDesk();
	const { say } = reader;
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
			label={say("fitting.support.label")}
			name="support"
			hint={hintOn("seated", reader)}
			value={value}
			options={[
				{ value: "standing", label: say("fitting.support.standing") },
				{ value: "seated", label: say("fitting.support.seated") },
				{ value: "frame", label: say("fitting.support.frame") },
			]}
			unsure={say("fitting.support.unsure")}
			onChange={(chosen) => {
				seated.onChange(
					chosen === "" ? "" : chosen === "seated" ? "yes" : "no",
				);
				frame.onChange(chosen === "frame" ? "yes" : "");
			}}
		/>
	);
}
