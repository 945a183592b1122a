"use client";

import { useRef } from "react";
import { Button } from "@/app/_ui/button";
import { ChoiceField, type Option } from "@/app/_ui/fields/choice-field";
import type { QuantitySpec } from "@/app/_ui/fields/quantity";
import { SelectField } from "@/app/_ui/fields/select-field";
import { SliderField } from "@/app/_ui/fields/slider-field";
import {
	ONLINE_QUESTIONS,
	type OnlineQuestion,
	onlineAnswer,
} from "@/lib/forms/online-cue";
import { formatLengthBand, formatMassBand } from "@/lib/present/figures";
import { gameName } from "@/lib/present/labels";
import { findingText, onlineProblemText } from "@/lib/present/online-findings";
import {
	lengthKindOf,
	onlineLabel,
	onlineValue,
} from "@/lib/present/online-names";
import {
	outlookText,
	remedyView,
	usualWeightView,
	type WayView,
} from "@/lib/present/online-view";
import { GAMES } from "@/lib/reference/rules";
import type { Reader } from "@/lib/words/reader";
import type { Finding } from "@/lib/workshop/online";
import {
	type CataloguedField,
	isBearing,
	type OnlineChoices,
	type OnlineField,
	optionsFor,
	usualOnline,
} from "@/lib/workshop/online-choices";
import styles from "./build.module.css";
import { useBuilding } from "./building";
import { fieldId } from "./field-id";
import { outlookKey, remedyKey } from "./use-assessed";

/** One choice with what is to be said of it; nothing where it has no bearing on the cue. */
export function Question({ field }: { field: OnlineField }) {
	const { choices, assessed } = useBuilding();
	const place = useRef<HTMLDivElement>(null);
	if (!isBearing(field, choices)) return null;
	const said = assessed.cue.findings.filter((one) => one.field === field);
	const isRefused = said.some(({ kind }) => kind === "refused");
	// What it costs is beside the point while it cannot be made.
	const findings = isRefused
		? said.filter(({ kind }) => kind !== "costs-more")
		: said;
	return (
		<div
			className={styles.question}
			id={fieldId(field)}
			ref={place}
			tabIndex={-1}
			data-refused={isRefused || undefined}
		>
			<Control field={field} />
			{field === "massG" && (
				<UsualWeight
					onTaken={() => place.current?.focus({ preventScroll: true })}
				/>
			)}
			{findings.map((finding) => (
				<Guard
					key={finding.code}
					finding={finding}
					onTaken={() => place.current?.focus({ preventScroll: true })}
				/>
			))}
		</div>
	);
}

function Control({ field }: { field: OnlineField }) {
	const question: OnlineQuestion = ONLINE_QUESTIONS[field];
	switch (question.kind) {
		case "length":
			return field === "endPieceMm" ? (
				<Listed field={field} />
			) : (
				<Figure
					field={field}
					spec={{
						dimension: "length",
						kind: lengthKindOf(field),
						min: question.min,
						max: question.max,
						bare: { metric: "mm", trade: "in" },
					}}
				/>
			);
		case "mass":
			return (
				<Figure
					field={field}
					spec={{
						dimension: "mass",
						kind: "cue",
						min: question.min,
						max: question.max,
					}}
				/>
			);
		case "count":
			return <Count field={field} min={question.min} max={question.max} />;
		case "yes-no":
			return <YesNo field={field} />;
		default:
			return <Listed field={field as CataloguedField} />;
	}
}

function useShared(field: OnlineField) {
	const { reader, answers, problems, answer } = useBuilding();
	const key = `online.hint.${field}`;
	const problem = problems.find((one) => one.field === field);
	return {
		label: onlineLabel(field, reader),
		hint: reader.say.has(key as never)
			? reader.say(key as "online.hint.massG")
			: undefined,
		name: field,
		value: answers[field] ?? "",
		error: problem === undefined ? null : onlineProblemText(problem, reader),
		onChange: (text: string) => answer(field, text),
	};
}

/** To slide or to type. What is left open rests where the cue stands now. */
function Figure({ field, spec }: { field: OnlineField; spec: QuantitySpec }) {
	const { reader, choices, assessed } = useBuilding();
	const { error: _, ...shared } = useShared(field);
	const { cue } = assessed;
	const { lengthMm } = choices;
	const standing: Partial<Record<OnlineField, number | undefined>> = {
		massG: cue.massG?.value,
		balanceFromButtMm: cue.balanceFromButtMm?.value,
		jointFromButtMm: cue.design?.joint
			? lengthMm - cue.design.joint.stationMm
			: 0.3 * lengthMm,
		pointsFromButtMm: 0.475 * lengthMm,
	};
	const chosen = choices[field];
	const resting =
		standing[field] ?? (typeof chosen === "number" ? chosen : spec.min);
	const zone = usualZone(field, choices, reader);
	return (
		<SliderField
			{...shared}
			spec={spec}
			resting={resting}
			{...(zone === null ? {} : { zone })}
		/>
	);
}

/** What is usual for the game, marked on the slider. */
function usualZone(
	field: OnlineField,
	{ gameId }: OnlineChoices,
	reader: Reader,
): { low: number; high: number; label: string } | null {
	const { usual } = GAMES[gameId];
	const range =
		field === "lengthMm"
			? usual.lengthMm
			: field === "massG"
				? usual.massG
				: field === "tipDiameterMm"
					? usual.tipMm
					: null;
	if (range === null) return null;
	const band = { low: range[0], high: range[1] };
	return {
		...band,
		label: reader.say("online.usualRange", {
			game: gameName(gameId, reader),
			band:
				field === "massG"
					? formatMassBand(band, reader)
					: formatLengthBand(band, reader, lengthKindOf(field)),
		}),
	};
}

/** So many stand beside each other as buttons; more become the device's own list. */
const MOST_BUTTONS = 5;

/** One of the catalogue's list; what does not go with the rest can be chosen all the same, and says why. */
function Listed({ field }: { field: CataloguedField }) {
	const { reader, offer, money, choices, assessed } = useBuilding();
	const shared = useShared(field);
	const { say } = reader;
	const listed = optionsFor(offer, choices.gameId)[
		field
	] as readonly OnlineChoices[CataloguedField][];
	const chosen = choices[field];
	const all = listed.includes(chosen) ? listed : [...listed, chosen];
	const usual = usualOnline(offer, choices.gameId)[field];
	const asButtons = all.length <= MOST_BUTTONS;
	const options = all.map((option): Option => {
		const name =
			option === null ? say("online.none") : onlineValue(field, option, reader);
		const outlook =
			option === chosen
				? undefined
				: assessed.outlooks.get(outlookKey(field, option));
		const note = outlook && outlookText(outlook, money, reader);
		const value = onlineAnswer(field, option);
		if (asButtons) {
			const hints = [
				...(option === usual && all.length > 1 ? [say("online.isUsual")] : []),
				...(note ? [note] : []),
			];
			return {
				value,
				label: name,
				...(hints.length > 0 && { hint: hints.join(", ") }),
			};
		}
		const short =
			outlook?.refused !== null && outlook?.refused !== undefined
				? say("online.option.refusedShort")
				: note;
		return {
			value,
			label: short
				? say("online.option.short", { option: name, note: short })
				: name,
		};
	});
	const value = onlineAnswer(field, chosen);
	return asButtons ? (
		<ChoiceField {...shared} value={value} options={options} unsure={null} />
	) : (
		<SelectField {...shared} value={value} options={options} unsure={null} />
	);
}

function Count({
	field,
	min,
	max,
}: {
	field: OnlineField;
	min: number;
	max: number;
}) {
	const { choices } = useBuilding();
	const counts = Array.from({ length: max - min + 1 }, (_, i) => min + i);
	return (
		<SelectField
			{...useShared(field)}
			value={String(choices[field])}
			options={counts.map((count) => ({
				value: String(count),
				label: String(count),
			}))}
			unsure={null}
		/>
	);
}

function YesNo({ field }: { field: OnlineField }) {
	const { reader, choices } = useBuilding();
	return (
		<ChoiceField
			{...useShared(field)}
			value={onlineAnswer(field, choices[field])}
			options={[
				{ value: "no", label: reader.say("online.no") },
				{ value: "yes", label: reader.say("online.yes") },
			]}
			unsure={null}
		/>
	);
}

/** A cue with no weight set into it is often lighter than its game is used to. */
function UsualWeight({ onTaken }: { onTaken: () => void }) {
	const { reader, assessed, apply } = useBuilding();
	const view = usualWeightView(assessed.cue, reader);
	if (view === null) return null;
	return (
		<div className={styles.way}>
			<p className={styles.dearer}>{view.text}</p>
			<Button
				onClick={() => {
					apply(view.change, view.done);
					onTaken();
				}}
			>
				{view.label}
			</Button>
		</div>
	);
}

/** Why a choice is refused, costs more, or needs care, and the nearest that works as one tap. */
function Guard({
	finding,
	onTaken,
}: {
	finding: Finding;
	onTaken: () => void;
}) {
	const { reader, money, assessed, apply } = useBuilding();
	const { say } = reader;
	const text = findingText(finding, money, reader);
	if (finding.kind === "costs-more" || finding.code === "protected-wood")
		return <p className={styles.dearer}>{text}</p>;
	const remedy = assessed.remedies.get(remedyKey(finding.field, finding.code));
	const view = remedy && remedyView(remedy, assessed.cue, money, reader);
	const take = ({ change, done }: WayView) => {
		apply(change, done);
		onTaken();
	};
	const isLookedFor =
		remedy === undefined &&
		!assessed.isDone &&
		(finding.kind === "refused" || finding.code === "protected-wood-border");
	return (
		<div className={styles.guard} data-kind={finding.kind}>
			<p>
				<strong>{text}</strong>
			</p>
			{isLookedFor && (
				<p className={styles.small}>{say("online.standing.working")}</p>
			)}
			{view?.nearest && <Way way={view.nearest} onTake={take} isFirst />}
			{view?.keeping && <Way way={view.keeping} onTake={take} />}
			{view?.nearest === null && (
				<p className={styles.small}>{say("online.standing.noWay")}</p>
			)}
		</div>
	);
}

function Way({
	way,
	onTake,
	isFirst = false,
}: {
	way: WayView;
	onTake: (way: WayView) => void;
	isFirst?: boolean;
}) {
	return (
		<div className={styles.way}>
			<Button look={isFirst ? "plain" : "quiet"} onClick={() => onTake(way)}>
				{way.label}
			</Button>
			{way.after !== "" && <small>{way.after}</small>}
		</div>
	);
}
