"use client";

import {
	memo,
	useCallback,
	useDeferredValue,
	useEffect,
	useId,
	useMemo,
	useRef,
	useState,
} from "react";
import { Button } from "@/app/_ui/button";
import { CueCanvas } from "@/app/_ui/cue-picture/cue-canvas";
import { CueOverlay } from "@/app/_ui/cue-picture/cue-overlay";
import { useWidth } from "@/app/_ui/cue-picture/use-width";
import { useReader } from "@/app/_ui/preferences/reader";
import type { CueDesign } from "@/lib/cue/design";
import { cuePicture } from "@/lib/present/cue-picture";
import { USUAL_GRAIN } from "@/lib/present/cue-shading";
import {
	type CuePart,
	type CueView,
	frameFor,
	heightForPx,
	readableStretch,
} from "@/lib/present/cue-view";
import { cueWords } from "@/lib/present/cue-words";
import { formatAngle, formatNumber } from "@/lib/present/figures";
import styles from "./build.module.css";

/** Before the browser has told how much room there is: a phone's. */
const USUAL_WIDTH_PX = 328;
/** Narrower pictures leave out what is written on them: they stay in sight while a form is filled in. */
const LABELLED_PX = 400;
const STEP_DEG = 5;
const TURN_STEP_DEG = 10;

/**
 * The cue as chosen, true to its geometry. Drawn under a native slider: dragging, tapping, arrow keys
 * and a screen reader's gestures all turn it.
 */
export const TurningCue = memo(function TurningCue({
	design,
	balanceFromButtMm,
}: {
	design: CueDesign;
	balanceFromButtMm: number | undefined;
}) {
	const reader = useReader();
	const { say } = reader;
	const id = useId();
	const [part, setPart] = useState<CuePart>("whole");
	const [turnDeg, setTurnDeg] = useState(0);
	const [room, widthPx] = useWidth(USUAL_WIDTH_PX);
	const angleDeg = useDeferredValue(turnDeg);
	const isBare = widthPx < LABELLED_PX;
	const picture = useMemo(() => {
		const stretch = readableStretch({ design, part, widthPx });
		const view: CueView = { part, isUnrolled: false, stretch };
		const heightPx = heightForPx({ design, view, widthPx });
		const frame = frameFor({ design, view, angleDeg, widthPx, heightPx });
		const drawn = cuePicture({ design, frame, reader, balanceFromButtMm });
		return isBare ? { ...drawn, roomAbovePx: 0, roomBelowPx: 0 } : drawn;
	}, [design, part, angleDeg, widthPx, reader, balanceFromButtMm, isBare]);
	const turn = useTurn(setTurnDeg);
	const { frame, roomAbovePx, roomBelowPx } = picture;

	return (
		<figure className={styles.picture}>
			<div className={styles.views}>
				{(["whole", "butt"] as const).map((one) => (
					<Button
						key={one}
						look="quiet"
						aria-pressed={part === one}
						onClick={() => setPart(one)}
					>
						{say(`online.picture.${one}`)}
					</Button>
				))}
				<Button look="quiet" onClick={turn.start}>
					{say(
						turn.isCalm ? "online.picture.quarter" : "online.picture.turnOnce",
					)}
				</Button>
				{frame.view.stretch > 1 && (
					<small className={styles.stretched}>
						{say("online.picture.stretched", {
							times: formatNumber(frame.view.stretch, reader),
						})}
					</small>
				)}
			</div>
			<div className={styles.stage} ref={room}>
				<div
					className={styles.drawn}
					style={{
						aspectRatio: `${widthPx} / ${roomAbovePx + frame.heightPx + roomBelowPx}`,
					}}
				>
					<CueCanvas design={design} picture={picture} grain={USUAL_GRAIN} />
					{!isBare && <CueOverlay picture={picture} />}
				</div>
				<input
					className={styles.turner}
					type="range"
					min={0}
					max={360 - STEP_DEG}
					step={STEP_DEG}
					value={turnDeg % 360}
					aria-label={say("cueView.turn")}
					aria-valuetext={formatAngle(turnDeg % 360, reader, 0)}
					aria-describedby={`${id}-words`}
					onChange={(event) => {
						turn.stop();
						setTurnDeg(Number(event.target.value));
					}}
				/>
				<span
					className={styles.turned}
					aria-hidden="true"
					style={{ insetInlineStart: `${((turnDeg % 360) / 360) * 100}%` }}
				/>
			</div>
			<figcaption className={styles.unseen} id={`${id}-words`}>
				{cueWords({ design, reader, balanceFromButtMm })}
			</figcaption>
		</figure>
	);
});

const CALM = "(prefers-reduced-motion: reduce)";

/** One slow turn, frame by frame; a quarter at once where the reader wants no motion. */
function useTurn(set: (change: (turnDeg: number) => number) => void): {
	readonly start: () => void;
	readonly stop: () => void;
	readonly isCalm: boolean;
} {
	const timer = useRef<ReturnType<typeof setInterval> | null>(null);
	const [isCalm, setCalm] = useState(false);
	useEffect(() => {
		const query = window.matchMedia(CALM);
		const take = () => setCalm(query.matches);
		take();
		query.addEventListener("change", take);
		return () => query.removeEventListener("change", take);
	}, []);
	const stop = useCallback(() => {
		if (timer.current !== null) clearInterval(timer.current);
		timer.current = null;
	}, []);
	useEffect(() => stop, [stop]);
	const start = useCallback(() => {
		stop();
		if (isCalm) {
			set((turnDeg) => (turnDeg + 90) % 360);
			return;
		}
		let left = 360 / TURN_STEP_DEG;
		timer.current = setInterval(() => {
			set((turnDeg) => (turnDeg + TURN_STEP_DEG) % 360);
			left--;
			if (left === 0) stop();
		}, 90);
	}, [isCalm, set, stop]);
	return { start, stop, isCalm };
}
