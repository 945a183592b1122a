"use client";

import { useEffect } from "react";
import { Notice } from "@/app/_ui/notice";
import { Section } from "@/app/_ui/section";
import { formatDay } from "@/lib/present/dates";
import type { OnlineCue } from "@/lib/workshop/online";
import type { OnlineField, OnlineOffer } from "@/lib/workshop/online-choices";
import styles from "./build.module.css";
import { BuildingProvider, type Opened, useBuilding } from "./building";
import { HomeMeasuresPart } from "./home-measures";
import { Question } from "./question";
import { SaveCue } from "./save-cue";
import { SendCue } from "./send-cue";
import { Standing } from "./standing";
import { useWork } from "./use-work";

interface Group {
	readonly name:
		| "game"
		| "size"
		| "woods"
		| "splice"
		| "front"
		| "weight"
		| "joint"
		| "way";
	readonly first: readonly OnlineField[];
	/** Folded away: what the workshop usually decides. */
	readonly more?: readonly OnlineField[];
}

const GROUPS: readonly Group[] = [
	{ name: "game", first: ["gameId"] },
	{
		name: "size",
		first: ["lengthMm", "buttDiameterMm"],
		more: ["tipDiameterMm", "taperShape"],
	},
	{ name: "woods", first: ["shaftWood", "buttWood"] },
	{
		name: "splice",
		first: ["splice"],
		more: [
			"pointsFromButtMm",
			"pointsBetween",
			"veneer",
			"veneerCount",
			"veneerMm",
			"frontWedge",
			"wedges",
			"wedgeCount",
		],
	},
	{ name: "front", first: ["ferruleMetal", "tip"] },
	{ name: "weight", first: ["massG"], more: ["balanceFromButtMm"] },
	{
		name: "joint",
		first: ["layout", "case"],
		more: ["jointFromButtMm", "jointMetal", "endPieceMm"],
	},
	{ name: "way", first: ["isGoingAbroad"] },
];

/** A cue put together by its customer: everything on one page, what it comes to always in sight. */
export function Configurator({
	offer,
	first,
	opened,
}: {
	offer: OnlineOffer;
	first: OnlineCue;
	opened: Opened | null;
}) {
	return (
		<BuildingProvider offer={offer} first={first} opened={opened}>
			<Laid />
		</BuildingProvider>
	);
}

function Laid() {
	const { reader, answers, assessed, jobs, isOnDevice } = useBuilding();
	const { say } = reader;
	const work = useWork();
	const { begin } = work;
	const isTouched = Object.values(answers).some(Boolean);
	// As soon as somebody chose something: it is done long before it is wanted.
	useEffect(() => {
		if (isTouched) begin();
	}, [isTouched, begin]);
	const { failure } = assessed;
	return (
		<div className={styles.split}>
			<div className={styles.aside}>
				<Standing />
			</div>
			<div className={styles.form}>
				{failure !== null && (
					<Notice kind="error" title={say("online.failed.title")} live>
						<p>{say("online.failed.text", { message: failure })}</p>
					</Notice>
				)}
				{!isOnDevice && (
					<Notice kind="caution">
						<p>{say("online.save.notOnDevice")}</p>
					</Notice>
				)}
				{jobs.map(({ number, sentOn }) => (
					<Notice key={number} kind="done">
						<p>
							{say("online.sent.again", {
								number,
								day: formatDay(sentOn, reader),
							})}{" "}
							{say("online.sent.later")}
						</p>
					</Notice>
				))}
				{GROUPS.map((group) => (
					<GroupPart key={group.name} {...group} />
				))}
				<Section
					title={say("online.save.title")}
					lead={say("online.save.lead")}
					card
				>
					<SaveCue work={work} />
				</Section>
				<Section
					title={say("online.send.title")}
					lead={say("online.send.lead")}
					card
				>
					<SendCue work={work} />
				</Section>
			</div>
		</div>
	);
}

function GroupPart({ name, first, more = [] }: Group) {
	const { reader, answers, assessed } = useBuilding();
	const { say } = reader;
	// What was touched or is spoken of stays in sight.
	const isOpen =
		more.some((field) => answers[field]) ||
		assessed.cue.findings.some(
			({ kind, field }) => kind === "refused" && more.includes(field),
		);
	return (
		<Section title={say(`online.group.${name}`)} card>
			<div className={styles.group}>
				{first.map((field) => (
					<Question key={field} field={field} />
				))}
				{name === "size" && <HomeMeasuresPart />}
				{more.length > 0 && (
					<More isOpen={isOpen} title={say(`online.more.${name as "size"}`)}>
						{more.map((field) => (
							<Question key={field} field={field} />
						))}
					</More>
				)}
			</div>
		</Section>
	);
}

function More({
	isOpen,
	title,
	children,
}: {
	isOpen: boolean;
	title: string;
	children: React.ReactNode;
}) {
	return (
		<details className={styles.more} open={isOpen}>
			<summary>{title}</summary>
			<div className={styles.group}>{children}</div>
		</details>
	);
}
