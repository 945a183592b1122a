"use client";

import { Slider } from "@base-ui/react/slider";
import { useId, useState } from "react";
import { GRAMS_PER_OUNCE, MM_PER_INCH } from "@/lib/units/quantity";
import type { Reader } from "@/lib/words/reader";
import { Button } from "../button";
import { useReader } from "../preferences/reader";
import { type EstimateWords, Field } from "./field";
import fieldStyles from "./field.module.css";
import {
	bothOf,
	type QuantitySpec,
	readTyped,
	refusedWords,
	settledText,
	written,
} from "./quantity";
import { Understood } from "./quantity-field";
import styles from "./slider-field.module.css";

/** How far one press of an arrow key goes, in mm or g. */
const STEPS = {
	length: { metric: 5, trade: MM_PER_INCH / 4 },
	diameter: { metric: 0.1, trade: MM_PER_INCH / 100 },
	mass: { metric: 1, trade: GRAMS_PER_OUNCE / 4 },
} as const;

const stepOf = (spec: QuantitySpec, reader: Reader): number => {
	if (spec.dimension === "mass") return STEPS.mass[reader.system];
	return STEPS[
		spec.kind === "diameter" || spec.kind === "gap" ? "diameter" : "length"
	][reader.system];
};

/**
 * A quantity to slide or to type, held as text like every other quantity. While it is left out the
 * thumb rests on `resting`. `zone` marks a stretch of the track and says what it is.
 */
export function SliderField({
	label,
	hint,
	name,
	value,
	onChange,
	spec,
	resting,
	zone,
	estimate,
	error: outerError,
	clear,
}: {
	label: string;
	hint?: React.ReactNode;
	name?: string;
	value: string;
	onChange: (text: string) => void;
	spec: QuantitySpec;
	resting: number;
	zone?: { low: number; high: number; label: string };
	estimate?: EstimateWords | null;
	error?: string | null;
	/** The button that empties the answer; null for none. */
	clear?: string | null;
}) {
	const reader = useReader();
	const sliderLabel = useId();
	const [typing, setTyping] = useState(false);
	const read = readTyped(value, spec, reader);
	const empty = value.trim() === "";
	const own =
		read.ok || empty || typing
			? null
			: refusedWords(label, read.refusal, spec, reader);
	const step = stepOf(spec, reader);
	const low = Math.ceil(spec.min / step - 1e-9) * step;
	const high = Math.floor(spec.max / step + 1e-9) * step;
	const at = Math.min(high, Math.max(low, read.ok ? read.value : resting));
	// Rounded: server and browser may differ in a number's last bits, and then the markup differs.
	const share = (quantity: number) =>
		Math.round(
			(1000 * (Math.min(high, Math.max(low, quantity)) - low)) / (high - low),
		) / 10;

	return (
		<Field
			label={label}
			hint={hint}
			error={outerError ?? own}
			estimate={estimate}
			empty={empty}
			echo={
				<>
					{read.ok && <Understood value={read.value} spec={spec} />}
					{zone !== undefined && (
						<p className={styles.zoneWords}>
							<span className={styles.zoneKey} aria-hidden="true" />{" "}
							{zone.label}
						</p>
					)}
				</>
			}
		>
			{(wiring) => (
				<div className={styles.room}>
					<div className={styles.twin}>
						<input
							{...wiring}
							className={`${fieldStyles.control} ${styles.typed}`}
							type="text"
							inputMode="decimal"
							autoComplete="off"
							spellCheck={false}
							name={name}
							value={value}
							placeholder={written(resting, spec, reader)}
							onChange={(event) => {
								if (own === null) setTyping(true);
								onChange(event.target.value);
							}}
							onBlur={() => {
								setTyping(false);
								const settled = settledText(value, spec, reader);
								if (settled !== value) onChange(settled);
							}}
						/>
						<Slider.Root
							className={styles.root}
							value={at}
							min={low}
							max={high}
							step={step}
							largeStep={step * 10}
							onValueChange={(next) => {
								setTyping(false);
								if (typeof next === "number")
									onChange(
										written(next, spec, reader).replaceAll("\u00a0", " "),
									);
							}}
						>
							<span className={styles.unseen} id={sliderLabel}>
								{reader.say("field.slider", { label })}
							</span>
							<Slider.Control className={styles.area}>
								<Slider.Track className={styles.track}>
									{zone !== undefined && (
										<span
											className={styles.zone}
											aria-hidden="true"
											style={{
												insetInlineStart: `${share(zone.low)}%`,
												insetInlineEnd: `${100 - share(zone.high)}%`,
											}}
										/>
									)}
									<Slider.Thumb
										className={styles.thumb}
										data-resting={!read.ok || undefined}
										aria-labelledby={sliderLabel}
										getAriaValueText={(_, quantity) => {
											const both = bothOf(quantity, spec, reader);
											return `${both.main}, ${both.other}`;
										}}
									/>
								</Slider.Track>
							</Slider.Control>
						</Slider.Root>
						{clear !== null && !empty && (
							<Button look="quiet" onClick={() => onChange("")}>
								{clear ?? reader.say("field.leaveOpen")}
							</Button>
						)}
					</div>
				</div>
			)}
		</Field>
	);
}
