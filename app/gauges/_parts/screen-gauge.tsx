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
	const { say } = useReader();
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
				<Notice kind="caution" title={say("gauges.stale")} live>
					{say("gauges.staleAbout")}
				</Notice>
			)}
			{!isKept && <Notice>{say("gauges.unkept")}</Notice>}
			<Button look="quiet" onClick={() => setMatching(true)}>
				{say("gauges.again")}
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
	const { say } = reader;
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
			<p>{say("gauges.lay")}</p>
			<div
				className={styles.stage}
				style={{ blockSize: Math.min(GAUGE_MM.to * pixelsPerMm, roomPx) + 8 }}
			>
				<svg
					role="img"
					aria-label={say("gauges.circle", { diameter: both.main })}
					data-testid="true-circle"
					width={px}
					height={px}
					viewBox="-1 -1 2 2"
				>
					<circle r="1" className={styles.disc} />
				</svg>
			</div>
			{px > roomPx && <Notice kind="caution">{say("gauges.tooWide")}</Notice>}
			<p className={styles.reading}>
				<strong>{both.main}</strong> · {both.other}
			</p>
			<GaugeSlider
				label={say("gauges.diameter")}
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
						{say("gauges.take")}
					</Button>
				</Actions>
			)}
			<div className={styles.check}>
				<span
					className={styles.checkLine}
					style={{ inlineSize: CHECK_MM * pixelsPerMm }}
				/>
				<span>{say("gauges.line", { length: String(CHECK_MM) })}</span>
			</div>
			{children}
		</div>
	);
}
