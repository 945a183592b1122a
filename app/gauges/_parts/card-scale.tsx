"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions } from "@/app/_ui/section";
import { ID1_CARD } from "@/lib/player/gauge";
import { formatNumber } from "@/lib/present/figures";
import { CARD_ON_SCREEN_PX, cardOnScreen } from "@/lib/present/gauge-view";
import styles from "./gauge.module.css";
import { GaugeSlider } from "./gauge-slider";
import { useRoom } from "./use-room";

/** Corner radius over the long side: 3.18 of 85.60 mm, from memory of the standard. */
const CORNER_SHARE = 3.18 / 85.6;

/** Matches a card's outline on the screen with a real one: the screen's scale follows. */
export function CardScale({
	startPx,
	onKeep,
}: {
	/** Long side to begin with, CSS pixels. */
	startPx: number;
	onKeep: (longSidePx: number) => void;
}) {
	const [longSidePx, setLongSidePx] = useState(startPx);
	const reader = useReader();
	const { say } = reader;
	const { ref, roomPx } = useRoom();
	const card = cardOnScreen({
		pixelsPerMm: longSidePx / ID1_CARD.widthMm,
		roomPx,
	});
	return (
		<div className={styles.panel} ref={ref}>
			<p>
				{say("gauges.card", {
					upright: card.upright ? "yes" : "no",
					width: formatNumber(ID1_CARD.widthMm, reader, 1),
					height: formatNumber(ID1_CARD.heightMm, reader, 2),
				})}
			</p>
			<div
				className={styles.card}
				data-testid="card-outline"
				style={{
					inlineSize: card.widthPx,
					blockSize: card.heightPx,
					borderRadius: CORNER_SHARE * longSidePx,
				}}
			/>
			<GaugeSlider
				label={say("gauges.cardSize")}
				value={longSidePx}
				{...CARD_ON_SCREEN_PX}
				onChange={setLongSidePx}
				valueText={(px) =>
					say("gauges.pixels", { count: formatNumber(px, reader, 1) })
				}
			/>
			<Actions>
				<Button look="main" onClick={() => onKeep(longSidePx)}>
					{say("gauges.fits")}
				</Button>
			</Actions>
		</div>
	);
}
