"use client";

import { useController } from "react-hook-form";
import { ChoiceField } from "@/app/_ui/fields/choice-field";
import { useDesk } from "./desk";

/** Who holds the tape. Alone, only what one can measure alone is asked; the rest stays an estimate. */
export function MeasuringMode() {
	const { control, reader } = useDesk();
	const { say } = reader;
	const { field } = useController({ control, name: "measuredAlone" });
	const isAlone = field.value === "yes";
	return (
		<ChoiceField
			label={say("fitting.mode.label")}
			name="measuredAlone"
			value={isAlone ? "yes" : "no"}
			options={[
				{ value: "no", label: say("fitting.mode.coach") },
				{ value: "yes", label: say("fitting.mode.alone") },
			]}
			onChange={field.onChange}
			unsure={null}
			hint={isAlone ? say("fitting.mode.hint") : undefined}
		/>
	);
}
