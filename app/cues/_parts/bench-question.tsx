"use client";

import { useState } from "react";
import { written } from "@/app/_ui/fields/quantity";
import { QuantityField } from "@/app/_ui/fields/quantity-field";
import { SelectField } from "@/app/_ui/fields/select-field";
import { SliderField } from "@/app/_ui/fields/slider-field";
import { TextField } from "@/app/_ui/fields/text-field";
import {
	BENCH_FIELDS,
	type BenchField,
	type BenchFieldName,
	readBenchField,
	usualBench,
} from "@/lib/forms/cue-bench";
import { formatNumber } from "@/lib/present/figures";
import { PLACES } from "@/lib/reference/climate";
import { useBench } from "./bench";
import {
	benchHint,
	benchLabel,
	benchSpec,
	optionInSentence,
	optionLabel,
} from "./questions";

const SLID: readonly BenchFieldName[] = ["length", "butt", "tip", "mass"];

/** One question of the bench, with the control its kind of answer asks for. */
export function BenchQuestion({ name }: { name: BenchFieldName }) {
	const { answers, answer, reader } = useBench();
	const usual = useUsual(name);
	const field: BenchField = BENCH_FIELDS[name];
	const shared = {
		label: benchLabel(name, reader),
		hint: benchHint(name, reader),
		name,
		value: answers[name] ?? "",
		onChange: (text: string) => answer(name, text),
	};
	if (field.kind === "choice")
		return (
			<SelectField
				{...shared}
				options={field.options.map((value) => ({
					value,
					label: optionLabel(name, value, reader),
				}))}
				unsure={
					typeof usual === "string"
						? reader.say("cues.usual", {
								option: optionInSentence(name, usual, reader),
							})
						: reader.say("cues.none")
				}
			/>
		);
	if (field.kind === "number")
		return <NumberField {...shared} field={name} usual={usual} />;
	const spec = benchSpec(name);
	if (SLID.includes(name) && typeof usual === "number")
		return (
			<SliderField
				{...shared}
				spec={spec}
				resting={usual}
				clear={reader.say("field.leaveOpen")}
			/>
		);
	return <Quantity {...shared} spec={spec} usual={usual} />;
}

function Quantity({
	usual,
	...shared
}: Omit<React.ComponentProps<typeof QuantityField>, "placeholder"> & {
	usual: number | string | undefined;
}) {
	const { reader } = useBench();
	return (
		<QuantityField
			{...shared}
			placeholder={
				typeof usual === "number"
					? written(usual, shared.spec, reader)
					: undefined
			}
		/>
	);
}

/** A bare number with its bounds: degrees, °C or percent, as its label says. */
function NumberField({
	field,
	usual,
	label,
	...shared
}: {
	field: BenchFieldName;
	usual: number | string | undefined;
	label: string;
	hint?: string;
	name: string;
	value: string;
	onChange: (text: string) => void;
}) {
	const { reader } = useBench();
	const [typing, setTyping] = useState(false);
	const shape: BenchField = BENCH_FIELDS[field];
	const read =
		shared.value.trim() === ""
			? null
			: readBenchField(field, shared.value, reader.system);
	const error =
		read === null || read.ok || typing || shape.kind === "choice"
			? null
			: reader.say("cues.notANumber", {
					label,
					text: shared.value,
					min: formatNumber(shape.min, reader),
					max: formatNumber(shape.max, reader),
				});
	return (
		<TextField
			{...shared}
			label={label}
			error={error}
			placeholder={
				typeof usual === "number" ? formatNumber(usual, reader) : undefined
			}
			inputMode="decimal"
			maxLength={20}
			onChange={(text) => {
				if (error === null) setTyping(true);
				shared.onChange(text);
			}}
			onBlur={() => setTyping(false)}
		/>
	);
}

/** What stands in while a question is left open; undefined where nothing does. */
function useUsual(name: BenchFieldName): number | string | undefined {
	const { question, cue } = useBench();
	const usual = usualBench(question.gameId);
	const air = (season: number) => PLACES[question.placeId].seasons[season]?.air;
	const standing: Partial<Record<BenchFieldName, number | string | undefined>> =
		{
			game: "snooker",
			length: usual.lengthMm,
			butt: usual.buttDiameterMm,
			tip: usual.tipDiameterMm,
			taper: usual.taperShape,
			shaftWood: usual.shaftWood,
			buttWood: usual.buttWood,
			splice: usual.splice,
			layout: usual.layout,
			ferrule: usual.ferruleMetal,
			jointMetal: "brass",
			mass: cue?.plan?.naturalMassG.value ?? cue?.mass.massG.value,
			joint: cue?.design.joint
				? cue.design.lengthMm - cue.design.joint.stationMm
				: undefined,
			dome: cue?.design.tip.domeRadiusMm,
			grip: usual.gripFromButtMm,
			rings: usual.ringSpacingMm,
			tilt: usual.tiltDeg,
			sightTurn: usual.sightTurnDeg,
			arrowSpacing: usual.arrowSpacingMm,
			place: usual.placeId,
			dryTemperature: air(0)?.temperatureC,
			dryHumidity: air(0)?.relativeHumidityPct,
			dampTemperature: air(1)?.temperatureC,
			dampHumidity: air(1)?.relativeHumidityPct,
		};
	return standing[name];
}
