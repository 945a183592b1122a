"use client";

import { useMemo } from "react";
import { Button } from "@/app/_ui/button";
import { CuePicture } from "@/app/_ui/cue-picture/cue-picture";
import { Notice } from "@/app/_ui/notice";
import { Actions } from "@/app/_ui/section";
import { buildOf } from "@/lib/advice/build";
import type { CueChoice } from "@/lib/advice/choice";
import { CRITERION_IDS } from "@/lib/advice/criteria";
import { criterionTitle, formatMeasure } from "@/lib/present/criterion-words";
import { formatLength, formatPercent } from "@/lib/present/figures";
import { inSentence, spliceLabel, woodName } from "@/lib/present/labels";
import { refusalView } from "@/lib/present/notices";
import { measureAt } from "@/lib/present/trade-off-view";
import { wishesOf } from "@/lib/present/wish-answers";
import { useDesk } from "./desk";
import { useBuildThis } from "./found-cues";
import styles from "./search.module.css";
import type { Found } from "./use-search";

/** One cue of the trade-offs: what it is, its numbers, its picture, and building it. */
export function PickedCue({
	found,
	place,
	choice,
	onStep,
}: {
	found: Found;
	place: number | null;
	choice: CueChoice | string | null;
	onStep: (by: number) => void;
}) {
	const { say } = useDesk().reader;
	return (
		<div className={styles.cue}>
			<Actions>
				<Button onClick={() => onStep(-1)}>{say("tradeOff.previous")}</Button>
				<Button onClick={() => onStep(1)}>{say("tradeOff.next")}</Button>
			</Actions>
			{typeof choice === "string" && (
				<Notice kind="caution" title={say("tradeOff.notFetched")}>
					<p>{choice}</p>
				</Notice>
			)}
			{place !== null && choice !== null && typeof choice !== "string" && (
				<Shown found={found} place={place} choice={choice} />
			)}
		</div>
	);
}

function Shown({
	found,
	place,
	choice,
}: {
	found: Found;
	place: number;
	choice: CueChoice;
}) {
	const { reader } = useDesk();
	const put = useBuildThis();
	const { cloud, report } = found;
	const money = report.options[0]?.price;
	const { request } = choice;
	const build = useMemo(
		() => buildOf(choice, report.input.workshop),
		[choice, report],
	);
	return (
		<>
			<h3>
				{reader.say("tradeOff.cue", {
					wood: woodName(request.buttWood, reader),
					splice: spliceLabel(request.splice, reader),
					layout: inSentence.layout(request.layout, reader),
					taper: inSentence.taper(request.taperShape, reader),
					butt: formatLength(request.buttDiameterMm, reader, "diameter"),
				})}
			</h3>
			<p>
				{reader.say("tradeOff.worth", {
					worth: formatPercent(cloud.overall[place] ?? 0, reader),
				})}
			</p>
			<div className={styles.columns}>
				{CRITERION_IDS.map((id) => (
					<p key={id}>
						<span className={styles.small}>{criterionTitle(id, reader)}</span>{" "}
						{formatMeasure(id, measureAt(cloud, place, id), reader, money)}
					</p>
				))}
			</div>
			{build.ok ? (
				<CuePicture
					design={
						build.value.plan.ok
							? build.value.plan.value.finished
							: build.value.design
					}
					balanceFromButtMm={measureAt(cloud, place, "balance")}
				/>
			) : (
				build.refusals.map((refusal) => (
					<p key={refusal.code}>{refusalView(refusal, reader).text}</p>
				))
			)}
			<Actions>
				<Button onClick={() => put(wishesOf(choice, reader))}>
					{reader.say("tradeOff.build")}
				</Button>
			</Actions>
		</>
	);
}
