"use client";

import { SelectField } from "@/app/_ui/fields/select-field";
import { TextField } from "@/app/_ui/fields/text-field";
import { useReader } from "@/app/_ui/preferences/reader";
import { Columns } from "@/app/_ui/section";
import type { JobExtras } from "@/lib/workshop/job-extras";

/** Names of the workshop's tips and cases. */
export interface ExtrasOffer {
	readonly tips: readonly string[];
	readonly cases: readonly string[];
}

/** What goes with the cue. A name that is no longer on offer stays to be chosen. */
export function ExtrasFields({
	offer,
	value,
	onChange,
}: {
	offer: ExtrasOffer;
	value: JobExtras;
	onChange: (value: JobExtras) => void;
}) {
	const { say } = useReader();
	const options = (names: readonly string[], now: string | null) =>
		[...new Set(now === null ? names : [...names, now])].map((name) => ({
			value: name,
			label: name,
		}));
	return (
		<Columns minRem={15}>
			<SelectField
				label={say("job.extras.tip")}
				value={value.tip ?? ""}
				unsure={say("job.extras.tipNone")}
				options={options(offer.tips, value.tip)}
				onChange={(tip) => onChange({ ...value, tip: tip || null })}
			/>
			<SelectField
				label={say("job.extras.case")}
				value={value.case ?? ""}
				unsure={say("job.extras.caseNone")}
				options={options(offer.cases, value.case)}
				onChange={(name) => onChange({ ...value, case: name || null })}
			/>
			<TextField
				label={say("job.extras.grip")}
				value={value.gripNotes}
				onChange={(gripNotes) => onChange({ ...value, gripNotes })}
				maxLength={400}
			/>
		</Columns>
	);
}
