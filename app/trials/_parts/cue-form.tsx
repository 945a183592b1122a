"use client";

import { useRouter } from "next/navigation";
import { useRef, useState, useTransition } from "react";
import { Button } from "@/app/_ui/button";
import {
	type QuantitySpec,
	readTyped,
	refusedWords,
} from "@/app/_ui/fields/quantity";
import { QuantityField } from "@/app/_ui/fields/quantity-field";
import { TextField } from "@/app/_ui/fields/text-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { newRequestKey } from "@/app/_ui/request-key";
import { Actions, Columns, Stack } from "@/app/_ui/section";
import { type RackCueFields, TRIAL_BOUNDS } from "@/lib/forms/trial";
import { trialFieldLabel } from "@/lib/present/trial-figures";
import { TRIAL_FIELDS, type TrialField } from "@/lib/trial/assumptions";
import { keepCue } from "../actions";

const SPECS: Readonly<Record<TrialField, QuantitySpec>> = {
	lengthMm: { dimension: "length", kind: "length", ...TRIAL_BOUNDS.lengthMm },
	massG: { dimension: "mass", kind: "cue", ...TRIAL_BOUNDS.massG },
	buttDiameterMm: {
		dimension: "length",
		kind: "diameter",
		...TRIAL_BOUNDS.buttDiameterMm,
	},
	tipDiameterMm: {
		dimension: "length",
		kind: "diameter",
		...TRIAL_BOUNDS.tipDiameterMm,
	},
	balanceFromButtMm: {
		dimension: "length",
		kind: "length",
		...TRIAL_BOUNDS.balanceFromButtMm,
	},
};

type Texts = Record<TrialField | "name" | "notes", string>;

/** Exact as stored: what is shown rounded elsewhere is not rounded by saving it again. */
const textsOf = (cue: RackCueFields | null): Texts => ({
	name: cue?.name ?? "",
	notes: cue?.notes ?? "",
	...(Object.fromEntries(
		TRIAL_FIELDS.map((field) => [
			field,
			cue === null ? "" : `${cue[field]} ${field === "massG" ? "g" : "mm"}`,
		]),
	) as Record<TrialField, string>),
});

/** Adds a cue to the rack, or corrects one. */
export function CueForm({
	cue,
}: {
	cue: (RackCueFields & { id: string; revision: number }) | null;
}) {
	const reader = useReader();
	const { say } = reader;
	const router = useRouter();
	const [texts, setTexts] = useState(() => textsOf(cue));
	const [isAsked, setAsked] = useState(false);
	const [message, setMessage] = useState<string | null>(null);
	const [isSaved, setSaved] = useState(false);
	const [isBusy, startTransition] = useTransition();
	const requestKey = useRef<string | null>(null);
	const revision = useRef(cue?.revision ?? 1);

	const put = (name: keyof Texts) => (text: string) => {
		setTexts((now) => ({ ...now, [name]: text }));
		setSaved(false);
		requestKey.current = null;
	};
	const read = (field: TrialField) =>
		readTyped(texts[field], SPECS[field], reader);
	const wrong = (field: TrialField): string | null => {
		const typed = read(field);
		if (!isAsked || typed.ok) return null;
		return refusedWords(
			trialFieldLabel(field, reader),
			typed.refusal,
			SPECS[field],
			reader,
		);
	};
	const save = () => {
		setAsked(true);
		const figures: Partial<Record<TrialField, number>> = {};
		for (const field of TRIAL_FIELDS) {
			const typed = read(field);
			if (typed.ok) figures[field] = typed.value;
		}
		if (
			texts.name.trim() === "" ||
			Object.keys(figures).length < TRIAL_FIELDS.length
		)
			return;
		requestKey.current ??= newRequestKey();
		const request = {
			id: cue?.id ?? null,
			revision: revision.current,
			requestKey: requestKey.current,
			fields: {
				...(figures as Record<TrialField, number>),
				name: texts.name,
				notes: texts.notes,
			},
		};
		setMessage(null);
		startTransition(async () => {
			try {
				const kept = await keepCue(request);
				if (!kept.ok) {
					setMessage(kept.message);
					return;
				}
				requestKey.current = null;
				setSaved(true);
				setAsked(false);
				if (cue === null) setTexts(textsOf(null));
				else revision.current = kept.revision;
				router.refresh();
			} catch {
				setMessage(say("trials.form.unreached"));
			}
		});
	};

	return (
		<Stack>
			<Columns minRem={18}>
				<TextField
					label={say("trials.form.name")}
					hint={say("trials.form.nameHint")}
					value={texts.name}
					onChange={put("name")}
					maxLength={60}
					error={
						isAsked && texts.name.trim() === ""
							? say("trials.form.noName")
							: null
					}
				/>
				{TRIAL_FIELDS.map((field) => (
					<QuantityField
						key={field}
						label={trialFieldLabel(field, reader)}
						hint={say(`trials.form.hint.${field}`)}
						value={texts[field]}
						onChange={put(field)}
						spec={SPECS[field]}
						error={wrong(field)}
					/>
				))}
			</Columns>
			<TextField
				label={say("trials.form.notes")}
				value={texts.notes}
				onChange={put("notes")}
				rows={2}
				maxLength={1000}
			/>
			{message !== null && (
				<Notice kind="error" title={say("trials.form.notSaved")} live>
					{message}
				</Notice>
			)}
			{isSaved && <Notice kind="done" title={say("trials.form.saved")} live />}
			<Actions>
				<Button look="main" wide busy={isBusy} onClick={save}>
					{cue === null ? say("trials.form.add") : say("trials.form.save")}
				</Button>
			</Actions>
		</Stack>
	);
}
