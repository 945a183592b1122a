"use client";

import { useController } from "react-hook-form";
import { ChoiceField } from "@/app/_ui/fields/choice-field";
import { useDesk } from "./desk";

const OPTIONS = [
	{ value: "no", label: "With a coach" },
	{ value: "yes", label: "Measuring alone" },
];

/** Who holds the tape. Alone, only what one can measure alone is asked; the rest stays an estimate. */
export function MeasuringMode() {
	const { control } = useDesk();
	const { field } = useController({ control, name: "measuredAlone" });
	const isAlone = field.value === "yes";
	return (
		<ChoiceField
			label="Who measures"
			name="measuredAlone"
			value={isAlone ? "yes" : "no"}
			options={OPTIONS}
			onChange={field.onChange}
			unsure={null}
			hint={
				isAlone
					? "Only what one can measure without help is asked. The rest is estimated, with its wider band shown. No reading is trusted less for being taken alone: read twice."
					: undefined
			}
		/>
	);
}
