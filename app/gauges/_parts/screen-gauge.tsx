"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions } from "@/app/_ui/section";
import { ID1_CARD } from "@/lib/player/gauge";
import { formatBothLength } from "@/lib/present/figures";
import { GAUGE_MM } from "@/lib/present/gauge-view";
import { CardScale } from "./card-scale";
import styles from "./gauge.module.css";
import { GaugeSlider } from "./gauge-slider";
import { useRoom } from "./use-room";
import { useScreenScale } from "./use-screen-scale";

/** CSS pixels a millimetre by definition, 96 to the inch: where matching begins, never trusted. */
const NOMINAL = 96 / 25.4;
/** Beside a ruler, mm. */
const CHECK_MM = 50;

/** A circle at true size on the screen, once a card has set the scale. */
export function ScreenGauge({
	startMm = 28,
	onTake,
}: {
	/** Diameter to begin with, mm. */
	startMm?: number;
	/** Takes the present diameter as a reading, mm; without it the gauge only shows. */
	onTake?: (diameterMm: number) => void;
}) {
	const { pixelsPerMm, isStale, isKept, keep } = useScreenScale();
	const [isMatching, setMatching] = useState(false);
	if (pixelsPerMm === null || isMatching)
		return (
			<CardScale
				startPx={Math.round(ID1_CARD.widthMm * (pixelsPerMm ?? NOMINAL))}
				onKeep={(px) => {
					keep(px);
					setMatching(false);
				}}
			/>
		);
	return (
		<Circle
			pixelsPerMm={pixelsPerMm}
			startMm={startMm}
			onTake={isStale ? undefined : onTake}
		>
			{isStale && (
				<Notice kind="caution" title="The scale has to be checked" live>
					The page’s zoom, or the screen, has changed since the card was
					matched. Match the card again before reading.
				</Notice>
			)}
			{!isKept && (
				<Notice>
					This device keeps nothing: the scale is gone with the page.
				</Notice>
			)}
			<Button look="quiet" onClick={() => setMatching(true)}>
				Check with the card again
			</Button>
		</Circle>
	);
}

function Circle({
	pixelsPerMm,
	startMm,
	onTake,
	children,
}: {
	pixelsPerMm: number;
	startMm: number;
	onTake?: (diameterMm: number) => void;
	children: React.ReactNode;
}) {
	const reader = useReader();
	const { ref, roomPx } = useRoom();
	const [diameterMm, setDiameterMm] = useState(
		Math.min(
			GAUGE_MM.to,
			Math.max(
				GAUGE_MM.from,
				Math.round(startMm / GAUGE_MM.step) * GAUGE_MM.step,
			),
		),
	);
	const px = diameterMm * pixelsPerMm;
	const both = formatBothLength(diameterMm, reader, "diameter");
	return (
		<div className={styles.panel} ref={ref}>
			<p>
				Lay the light ring of thumb and forefinger on the screen and change the
				circle until it just fills the ring.
			</p>
			<div
				className={styles.stage}
				style={{ blockSize: Math.min(GAUGE_MM.to * pixelsPerMm, roomPx) + 8 }}
			>
				<svg
					role="img"
					aria-label={`Circle of ${both.main} at true size`}
					data-testid="true-circle"
					width={px}
					height={px}
					viewBox="-1 -1 2 2"
				>
					<circle r="1" className={styles.disc} />
				</svg>
			</div>
			{px > roomPx && (
				<Notice kind="caution">
					This circle is wider than the room here: turn the device, or use a
					print.
				</Notice>
			)}
			<p className={styles.reading}>
				<strong>{both.main}</strong> · {both.other}
			</p>
			<GaugeSlider
				label="Diameter of the circle"
				value={diameterMm}
				min={GAUGE_MM.from}
				max={GAUGE_MM.to}
				step={GAUGE_MM.step}
				onChange={setDiameterMm}
				valueText={(mm) => formatBothLength(mm, reader, "diameter").main}
			/>
			{onTake !== undefined && (
				<Actions>
					<Button look="main" onClick={() => onTake(diameterMm)}>
						Take this reading
					</Button>
				</Actions>
			)}
			<div className={styles.check}>
				<span
					className={styles.checkLine}
					style={{ inlineSize: CHECK_MM * pixelsPerMm }}
				/>
				<span>This line is {CHECK_MM} mm: check it with a ruler.</span>
			</div>
			{children}
		</div>
	);
}
