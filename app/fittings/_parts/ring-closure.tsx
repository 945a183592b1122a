"use client";

import { useMemo } from "react";
import { DataTable } from "@/app/_ui/data-table";
import { Section } from "@/app/_ui/section";
import type { Advice } from "@/lib/advice/advise";
import {
	type ClosurePlace,
	closureView,
	handleContext,
} from "@/lib/present/gauge-view";
import { useDesk } from "./desk";
import fittingStyles from "./fitting.module.css";
import styles from "./measuring.module.css";

const COLUMNS = [
	["name", "hand"],
	["fromButt", "fromButt"],
	["diameter", "cue"],
	["closure", "ring"],
	["band", "band"],
	["verdict", "verdict"],
] as const;

/** How a light hold closes along the grip zone, with the research on hard grips beside it as context. */
export function RingClosure() {
	const { advice } = useDesk();
	return advice.ok ? <Closed advice={advice.value} /> : null;
}

function Closed({ advice }: { advice: Advice }) {
	const { reader } = useDesk();
	const { say } = reader;
	const view = useMemo(() => closureView(advice, reader), [advice, reader]);
	const context = useMemo(
		() => handleContext(advice, reader),
		[advice, reader],
	);
	return (
		<Section title={say("fitting.closure.title")} lead={view.lead}>
			<div className={styles.rings}>
				{view.places.map((place) => (
					<figure key={place.place} className={styles.ringPlace}>
						<RingOnCue place={place} />
						<figcaption>
							{place.name}: <strong>{place.closure}</strong>
						</figcaption>
					</figure>
				))}
			</div>
			<DataTable
				caption={say("fitting.closure.caption")}
				captionHidden
				columns={COLUMNS.map(([key, word]) => ({
					key,
					label: say(`fitting.closure.${word}`),
				}))}
				rows={view.places.map(
					({ name, fromButt, diameter, closure, band, verdict }) => ({
						name,
						fromButt,
						diameter,
						closure,
						band,
						verdict,
					}),
				)}
			/>
			<details className={fittingStyles.more}>
				<summary>{say("fitting.closure.research")}</summary>
				<p>{context.lead}</p>
				<ul className={fittingStyles.list}>
					{context.rows.map(({ what, diameter, source }) => (
						<li key={what}>
							{what}: <strong>{diameter}</strong>.{" "}
							<span className={styles.source}>{source}.</span>
						</li>
					))}
				</ul>
				<p>{context.close}</p>
			</details>
		</Section>
	);
}

/** Thickness of a finger in the picture, mm. */
const FINGER_MM = 7;
/** How far an overlapping thumb stands off the cue at its end, mm. */
const LIFT_MM = 4;
/** Thumb and finger meet the hand here, deg clockwise from the top. */
const HAND_DEG = 95;

/** The cue end on with the ring of the hand round it, to scale; the pads at the top. */
function RingOnCue({
	place: { name, diameter, closure, diameterMm, ringDeg },
}: {
	place: ClosurePlace;
}) {
	const { say } = useDesk().reader;
	const radius = (diameterMm + FINGER_MM) / 2;
	const half = (360 - ringDeg) / 2;
	// Where they overlap the thumb lies over the finger: it leaves the cue towards its end.
	const lift = half < 0 ? LIFT_MM : 0;
	const at = (r: number, deg: number): string => {
		const turn = ((deg - 90) * Math.PI) / 180;
		const text = (value: number) => Math.round(value * 100) / 100;
		return `${text(r * Math.cos(turn))} ${text(r * Math.sin(turn))}`;
	};
	const curve = (toDeg: number, rise: number): string =>
		`M${Array.from({ length: 33 }, (_, i) => {
			const share = i / 32;
			return at(
				radius + rise * share ** 2,
				HAND_DEG + (toDeg - HAND_DEG) * share,
			);
		}).join("L")}`;
	const end = (deg: number, rise: number): string =>
		`M${at(diameterMm / 2 + rise, deg)}L${at(diameterMm / 2 + FINGER_MM + rise, deg)}`;
	return (
		<svg
			className={styles.ringDrawing}
			viewBox="-32 -32 64 64"
			role="img"
			aria-label={say("fitting.closure.drawing", {
				name,
				across: diameter,
				closure,
			})}
		>
			<circle className={styles.wood} r={Math.round(50 * diameterMm) / 100} />
			<Finger d={curve(360 - half, 0)} end={end(360 - half, 0)} />
			<Finger d={curve(half, lift)} end={end(half, lift)} />
		</svg>
	);
}

const Finger = ({ d, end }: { d: string; end: string }) => (
	<>
		<path className={styles.fingerEdge} d={d} strokeWidth={FINGER_MM} />
		<path className={styles.finger} d={d} strokeWidth={FINGER_MM - 1.2} />
		<path className={styles.pad} d={end} />
	</>
);
