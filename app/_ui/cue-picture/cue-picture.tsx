"use client";

import { memo, useDeferredValue, useId, useMemo, useState } from "react";
import type { CueDesign } from "@/lib/cue/design";
import { cuePicture } from "@/lib/present/cue-picture";
import { type CueGrain, USUAL_GRAIN } from "@/lib/present/cue-shading";
import {
	type CueView,
	frameFor,
	heightForPx,
	readableStretch,
} from "@/lib/present/cue-view";
import { cueWords, seenRows, viewWords } from "@/lib/present/cue-words";
import { DataTable } from "../data-table";
import { ChoiceField } from "../fields/choice-field";
import { useInTurn } from "../in-turn/use-in-turn";
import { useNear } from "../in-turn/use-near";
import { useReader } from "../preferences/reader";
import { CueCanvas } from "./cue-canvas";
import { CueOverlay } from "./cue-overlay";
import styles from "./cue-picture.module.css";
import { TurnSlider } from "./turn-slider";
import { useWidth } from "./use-width";

const VIEWS = {
	scale: { part: "whole", isUnrolled: false },
	whole: { part: "whole", isUnrolled: false },
	front: { part: "front", isUnrolled: false },
	butt: { part: "butt", isUnrolled: false },
	flat: { part: "whole", isUnrolled: true },
} as const;
export type ViewName = keyof typeof VIEWS;

/** Before the browser has told how much room there is. */
const USUAL_WIDTH_PX = 960;

/**
 * A cue drawn true to its geometry, to be turned and looked at from near. What it shows is told in
 * words beneath and as a table. Prints as it stands; on pages made for paper use `CuePlate`.
 */
export function CuePicture({ view = "whole", ...seen }: Seen) {
	const [place, isNear] = useNear();
	return (
		<div ref={place}>
			<Picture seen={useInTurn(seen, isNear)} firstView={view} />
		</div>
	);
}

interface Seen {
	readonly design: CueDesign;
	readonly grain?: CueGrain;
	readonly balanceFromButtMm?: number;
	readonly view?: ViewName;
}

const Picture = memo(function Picture({
	seen: { design, grain = USUAL_GRAIN, balanceFromButtMm },
	firstView,
}: {
	seen: Omit<Seen, "view">;
	firstView: ViewName;
}) {
	const reader = useReader();
	const id = useId();
	const [name, setName] = useState<ViewName>(firstView);
	const [turnDeg, setTurnDeg] = useState(0);
	const [room, widthPx] = useWidth(USUAL_WIDTH_PX);
	const angleDeg = useDeferredValue(turnDeg);
	const view = useMemo<CueView>(() => {
		const { part, isUnrolled } = VIEWS[name];
		const stretch =
			name === "scale" ? 1 : readableStretch({ design, part, widthPx });
		return { part, isUnrolled, stretch };
	}, [name, design, widthPx]);
	const picture = useMemo(() => {
		const heightPx = heightForPx({ design, view, widthPx });
		const frame = frameFor({ design, view, angleDeg, widthPx, heightPx });
		return cuePicture({ design, frame, reader, balanceFromButtMm });
	}, [design, view, angleDeg, widthPx, reader, balanceFromButtMm]);
	const words = viewWords({ ...view, angleDeg }, reader);

	return (
		<figure className={styles.frame} aria-describedby={`${id}-words`}>
			<div className={styles.room} ref={room}>
				<div
					className={styles.stage}
					role="img"
					aria-label={words}
					style={{
						aspectRatio: `${widthPx} / ${picture.roomAbovePx + picture.frame.heightPx + picture.roomBelowPx}`,
					}}
				>
					<CueCanvas design={design} picture={picture} grain={grain} />
					<CueOverlay picture={picture} />
				</div>
			</div>
			<TurnSlider valueDeg={turnDeg} onChange={setTurnDeg} />
			<div className={styles.views}>
				<ChoiceField
					label={reader.say("cueView.shown")}
					value={name}
					options={(Object.keys(VIEWS) as ViewName[]).map((value) => ({
						value,
						label: reader.say(`cueView.${value}`),
					}))}
					onChange={(value) => setName(value as ViewName)}
					unsure={null}
				/>
			</div>
			<figcaption className={styles.words} id={`${id}-words`}>
				<p>{reader.say("cueView.fromButt", { words })}</p>
				<p>{cueWords({ design, reader, balanceFromButtMm })}</p>
			</figcaption>
			<details className={styles.seen}>
				<summary>{reader.say("cueView.facing")}</summary>
				<DataTable
					caption={reader.say("cueView.fromTip", { angle: `${angleDeg}°` })}
					columns={[
						{ key: "part", label: reader.say("cueView.part") },
						{ key: "material", label: reader.say("cueView.material") },
						{ key: "from", label: reader.say("cueView.from"), numeric: true },
						{ key: "to", label: reader.say("cueView.to"), numeric: true },
					]}
					rows={seenRows({ design, angleDeg, reader }).map((row) => ({
						...row,
					}))}
					narrow="scroll"
				/>
			</details>
		</figure>
	);
});
