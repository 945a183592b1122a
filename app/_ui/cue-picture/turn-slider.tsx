"use client";

import { Slider } from "@base-ui/react/slider";
import { useId } from "react";
import { useReader } from "../preferences/reader";
import styles from "./cue-picture.module.css";

const STEP_DEG = 5;

/** Turns the cue about its axis. Arrow keys turn by 5°, page keys by 45°. */
export function TurnSlider({
	valueDeg,
	onChange,
}: {
	valueDeg: number;
	onChange: (angleDeg: number) => void;
}) {
	const { say } = useReader();
	const faceOf = (angleDeg: number) => say(`cueView.face.${faceAt(angleDeg)}`);
	const label = useId();
	return (
		<div className={styles.turn}>
			<span className={styles.turnLabel} id={label}>
				{say("cueView.turn")}
			</span>
			<Slider.Root
				className={styles.slider}
				value={valueDeg}
				min={0}
				max={360 - STEP_DEG}
				step={STEP_DEG}
				largeStep={45}
				onValueChange={(next) => {
					if (typeof next === "number") onChange(next);
				}}
			>
				<Slider.Control className={styles.sliderArea}>
					<Slider.Track className={styles.track}>
						<Slider.Thumb
							className={styles.thumb}
							aria-labelledby={label}
							getAriaValueText={(_, angleDeg) =>
								say("cueView.turned", {
									angle: `${angleDeg}°`,
									face: faceOf(angleDeg),
								})
							}
						/>
					</Slider.Track>
				</Slider.Control>
			</Slider.Root>
			<output className={styles.turnValue}>
				{valueDeg}° <small>{faceOf(valueDeg)}</small>
			</output>
		</div>
	);
}

const FACES = ["front", "oneSide", "back", "otherSide"] as const;

/** The nearest quarter. */
const faceAt = (angleDeg: number) =>
	FACES[Math.round(angleDeg / 90) % FACES.length] ?? "front";
