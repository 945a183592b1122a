"use client";

import { Slider } from "@base-ui/react/slider";
import { useId } from "react";
import { Button } from "@/app/_ui/button";
import sliderStyles from "@/app/_ui/fields/slider-field.module.css";
import { useReader } from "@/app/_ui/preferences/reader";
import styles from "./gauge.module.css";

/** A size to slide, to step with the arrow keys, or to step with two buttons. */
export function GaugeSlider({
	label,
	value,
	min,
	max,
	step,
	onChange,
	valueText,
}: {
	label: string;
	value: number;
	min: number;
	max: number;
	step: number;
	onChange: (value: number) => void;
	valueText: (value: number) => string;
}) {
	const id = useId();
	const { say } = useReader();
	const by = (steps: number) =>
		onChange(Math.min(max, Math.max(min, value + steps * step)));
	return (
		<div className={styles.slider}>
			<span className={styles.sliderName} id={id}>
				{label}
			</span>
			<div className={styles.sliderRow}>
				<Button
					aria-label={say("gauges.smaller", { label })}
					onClick={() => by(-1)}
				>
					−
				</Button>
				<Slider.Root
					className={sliderStyles.root}
					value={value}
					min={min}
					max={max}
					step={step}
					largeStep={step * 10}
					onValueChange={(next) => {
						if (typeof next === "number") onChange(next);
					}}
				>
					<Slider.Control className={sliderStyles.area}>
						<Slider.Track className={sliderStyles.track}>
							<Slider.Thumb
								className={sliderStyles.thumb}
								aria-labelledby={id}
								getAriaValueText={(_, at) => valueText(at)}
							/>
						</Slider.Track>
					</Slider.Control>
				</Slider.Root>
				<Button
					aria-label={say("gauges.larger", { label })}
					onClick={() => by(1)}
				>
					+
				</Button>
			</div>
		</div>
	);
}
