"use client";

import { useState } from "react";
import { useController } from "react-hook-form";
import { ChoiceField } from "@/app/_ui/fields/choice-field";
import { type DrawingName, MeasureDrawing } from "@/app/_ui/measure-drawings";
import { Notice } from "@/app/_ui/notice";
import { PrintGauge } from "@/app/gauges/_parts/print-gauge";
import { ScreenGauge } from "@/app/gauges/_parts/screen-gauge";
import { MAX_GRIP_READINGS } from "@/lib/forms/bounds";
import { readingNotices } from "@/lib/present/gauge-view";
import { useDesk } from "./desk";
import { MeasureExtras } from "./measure-question";
import styles from "./measuring.module.css";
import { Question } from "./question";

type Way = "cone" | "paper" | "screen";

const WAYS: readonly { value: Way; drawing: DrawingName }[] = [
	{ value: "cone", drawing: "ring-cone" },
	{ value: "paper", drawing: "ring-paper" },
	{ value: "screen", drawing: "ring-screen" },
];

/** The ring read in one of three ways, each reading taken down, and what the readings say together. */
export function RingReading() {
	const { control, read, advice, reader } = useDesk();
	const { say } = reader;
	const { field } = useController({ control, name: "gripReadings" });
	const [chosen, setChosen] = useState<Way>("cone");
	const way = WAYS.find(({ value }) => value === chosen) ?? WAYS[0];
	const taken = field.value.filter((text) => text.trim() !== "");
	const notices = advice.ok ? readingNotices(advice.value, reader) : [];
	return (
		<div className={styles.ring}>
			<ChoiceField
				label={say("fitting.ring.label")}
				name="ringWay"
				value={chosen}
				options={WAYS.map(({ value }) => ({
					value,
					label: say(`fitting.ring.${value}`),
				}))}
				onChange={(value) => setChosen(value as Way)}
				unsure={null}
			/>
			<div className={styles.way}>
				{way !== undefined && (
					<div className={styles.large}>
						<MeasureDrawing
							name={way.drawing}
							left={read.input.hand === "left"}
						/>
					</div>
				)}
				{chosen === "cone" && <p>{say("fitting.ring.about")}</p>}
				{chosen === "paper" && <PrintGauge />}
				{chosen === "screen" && (
					<ScreenGauge
						startMm={advice.ok ? advice.value.grip.circleMm.value : undefined}
						onTake={
							taken.length < MAX_GRIP_READINGS
								? (mm) => field.onChange([...taken, `${mm} mm`])
								: undefined
						}
					/>
				)}
			</div>
			<div className={styles.measure}>
				<Question name="gripReadings" />
				{notices.map((text) => (
					<Notice key={text} kind="caution" live>
						{text}
					</Notice>
				))}
				<MeasureExtras name="gripReadings" />
			</div>
		</div>
	);
}
