"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import type { Option } from "@/app/_ui/fields/choice-field";
import {
	type QuantitySpec,
	readTyped,
	written,
} from "@/app/_ui/fields/quantity";
import { QuantityField } from "@/app/_ui/fields/quantity-field";
import { SelectField } from "@/app/_ui/fields/select-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Columns } from "@/app/_ui/section";
import { CHOICES } from "@/lib/forms/choices";
import { CHANGE_BOUNDS, type JobChange } from "@/lib/forms/job";
import {
	layoutLabel,
	metalName,
	spliceLabel,
	taperLabel,
	woodName,
} from "@/lib/present/labels";
import type { Reader } from "@/lib/words/reader";
import type { CueChange } from "@/lib/workshop/job-change";
import type { JobExtras } from "@/lib/workshop/job-extras";
import { previewChange } from "../actions";
import { ExtrasFields, type ExtrasOffer } from "./extras-fields";
import { StepMessages, useDesk } from "./job-desk";
import { type Preview, SaveChange } from "./save-change";

type FigureField =
	| "lengthMm"
	| "massG"
	| "buttDiameterMm"
	| "tipDiameterMm"
	| "balanceFromButtMm";
type PartField = Exclude<keyof CueChange, FigureField>;

const SPECS: Readonly<Record<FigureField, QuantitySpec>> = {
	lengthMm: { dimension: "length", kind: "length", ...CHANGE_BOUNDS.lengthMm },
	massG: { dimension: "mass", kind: "cue", ...CHANGE_BOUNDS.massG },
	buttDiameterMm: {
		dimension: "length",
		kind: "diameter",
		...CHANGE_BOUNDS.buttDiameterMm,
	},
	tipDiameterMm: {
		dimension: "length",
		kind: "diameter",
		...CHANGE_BOUNDS.tipDiameterMm,
	},
	balanceFromButtMm: {
		dimension: "length",
		kind: "length",
		...CHANGE_BOUNDS.balanceFromButtMm,
	},
};
const FIGURE_FIELDS = Object.keys(SPECS) as FigureField[];
const FIGURE_WORDS = {
	lengthMm: "length",
	massG: "mass",
	buttDiameterMm: "butt",
	tipDiameterMm: "tip",
	balanceFromButtMm: "balance",
} as const;

const PARTS = {
	shaftWood: { words: "shaftWood", label: woodName },
	buttWood: { words: "buttWood", label: woodName },
	splice: { words: "splice", label: spliceLabel },
	layout: { words: "layout", label: layoutLabel },
	taperShape: { words: "taper", label: taperLabel },
	ferruleMetal: { words: "ferrule", label: metalName },
} as const satisfies Record<PartField, unknown>;
const PART_FIELDS = Object.keys(PARTS) as PartField[];

const optionsOf = (field: PartField, reader: Reader): Option[] =>
	CHOICES[field].map((value) => ({
		value,
		label: (PARTS[field].label as (id: string, reader: Reader) => string)(
			value,
			reader,
		),
	}));

/** A change of the cue: worked out and shown first, then kept as the next revision. */
export function ChangeEditor({
	cue,
	extras: extrasBefore,
	offer,
	latestRevision,
	laterSpec,
	money,
	quotedMinor,
}: {
	cue: CueChange;
	extras: JobExtras;
	offer: ExtrasOffer;
	latestRevision: number;
	/** A later revision of the spec that the job came from. */
	laterSpec: { number: number; revision: number } | null;
	money: { currency: string; minorPerUnit: number };
	/** Price of the quote as it stands; null before there is one. */
	quotedMinor: number | null;
}) {
	const reader = useReader();
	const { say } = reader;
	const { number } = useDesk();
	const [texts, setTexts] = useState<Record<FigureField, string>>(() =>
		textsOf(cue, reader),
	);
	const [parts, setParts] = useState(() => partsOf(cue));
	const [extras, setExtras] = useState(extrasBefore);
	const [isBusy, setBusy] = useState(false);
	const [messages, setMessages] = useState<readonly string[]>([]);
	const [worked, setWorked] = useState<{
		change: JobChange;
		preview: Preview;
	} | null>(null);

	const workOut = async (change: JobChange) => {
		setBusy(true);
		setMessages([]);
		setWorked(null);
		try {
			const preview = await previewChange({ number, change });
			if (preview.ok) setWorked({ change, preview });
			else setMessages(preview.messages);
		} catch {
			setMessages([say("job.noAnswer")]);
		} finally {
			setBusy(false);
		}
	};
	const workOutEdit = () => {
		const figures = figuresOf(texts, cue, reader);
		if (figures === null) setMessages([say("job.change.wrong")]);
		else void workOut({ from: "edit", cue: { ...figures, ...parts }, extras });
	};

	return (
		<details>
			<summary>{say("job.change.title")}</summary>
			<p>{say("job.change.lead")}</p>
			{laterSpec !== null && (
				<Notice title={say("job.change.spec", laterSpec)}>
					<Button
						busy={isBusy}
						onClick={() =>
							workOut({
								from: "spec",
								specRevision: laterSpec.revision,
								extras,
							})
						}
					>
						{say("job.change.takeSpec")}
					</Button>
				</Notice>
			)}
			<Columns minRem={15}>
				{FIGURE_FIELDS.map((field) => (
					<QuantityField
						key={field}
						label={say(`job.change.${FIGURE_WORDS[field]}`)}
						hint={
							field === "balanceFromButtMm"
								? say("job.change.balanceHint")
								: undefined
						}
						spec={SPECS[field]}
						value={texts[field]}
						onChange={(text) => setTexts((now) => ({ ...now, [field]: text }))}
					/>
				))}
				{PART_FIELDS.map((field) => (
					<SelectField
						key={field}
						label={say(`job.change.${PARTS[field].words}`)}
						value={parts[field]}
						unsure={null}
						options={optionsOf(field, reader)}
						onChange={(value) =>
							setParts((now) => ({ ...now, [field]: value }))
						}
					/>
				))}
			</Columns>
			<ExtrasFields offer={offer} value={extras} onChange={setExtras} />
			<StepMessages messages={messages} />
			<Actions>
				<Button busy={isBusy} onClick={workOutEdit}>
					{say("job.change.workOut")}
				</Button>
			</Actions>
			{worked !== null && (
				<SaveChange
					key={JSON.stringify(worked.change)}
					{...worked}
					latestRevision={latestRevision}
					money={money}
					quotedMinor={quotedMinor}
					onSaved={() => setWorked(null)}
				/>
			)}
		</details>
	);
}

const partsOf = (cue: CueChange): Pick<CueChange, PartField> =>
	Object.fromEntries(PART_FIELDS.map((field) => [field, cue[field]])) as Pick<
		CueChange,
		PartField
	>;

function textsOf(cue: CueChange, reader: Reader): Record<FigureField, string> {
	return Object.fromEntries(
		FIGURE_FIELDS.map((field) => {
			const value = cue[field];
			return [
				field,
				value === null ? "" : written(value, SPECS[field], reader),
			];
		}),
	) as Record<FigureField, string>;
}

/**
 * The figures as typed; null where one cannot be read. One that was left as it stood keeps its exact
 * value, which its text has only rounded.
 */
function figuresOf(
	texts: Record<FigureField, string>,
	cue: CueChange,
	reader: Reader,
): Pick<CueChange, FigureField> | null {
	const before = textsOf(cue, reader);
	const figures: Partial<Record<FigureField, number | null>> = {};
	for (const field of FIGURE_FIELDS) {
		if (texts[field] === before[field]) {
			figures[field] = cue[field];
			continue;
		}
		if (field === "balanceFromButtMm" && texts[field].trim() === "") {
			figures[field] = null;
			continue;
		}
		const read = readTyped(texts[field], SPECS[field], reader);
		if (!read.ok) return null;
		figures[field] = read.value;
	}
	return figures as Pick<CueChange, FigureField>;
}
