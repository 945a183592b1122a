"use client";

import { useState } from "react";
import { deviceStore, removeFromDevice } from "@/app/_device/tools";
import { deviceAddress } from "@/app/_device/use-begin";
import { Busy } from "@/app/_ui/busy";
import { Button, LinkButton } from "@/app/_ui/button";
import { TextField } from "@/app/_ui/fields/text-field";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions, Columns, PageHead, Section, Stack } from "@/app/_ui/section";
import { QUESTION_STEPS, stepHref } from "@/app/fittings/_parts/steps";
import { stayingOnPage } from "@/app/fittings/_parts/way";
import { formatMoment } from "@/lib/present/moments";
import styles from "./coaching.module.css";
import { InstallPart } from "./install-part";
import { StartPanel } from "./start-panel";
import { type DeviceHomeState, useDeviceHome } from "./use-device-home";

const FIRST_STEP = QUESTION_STEPS[0]?.id ?? "player";

/** The sessions on this device, the start of a new one, and what the device can do without a network. */
export function DeviceHome({
	from,
}: {
	/** The address that was asked for and could not be fetched; null where this page was. */
	from: string | null;
}) {
	const { say, language } = useReader();
	const { state, reload } = useDeviceHome();
	if (state === null) return <Busy label={say("coaching.looking")} />;
	const players = state === "none" ? null : state.players;
	return (
		<Stack>
			<PageHead title={say("coaching.title")} lead={say("coaching.lead")} />
			{from !== null && (
				<Notice kind="caution" title={say("coaching.from.title")}>
					<p>{say("coaching.from.about")}</p>
					<Actions>
						<LinkButton href={safe(from)}>
							{say("coaching.from.again")}
						</LinkButton>
					</Actions>
				</Notice>
			)}
			{state === "none" && (
				<Notice kind="caution" title={say("coaching.noStorage.title")}>
					{say("coaching.noStorage.about")}
				</Notice>
			)}
			<StartPanel
				players={players?.players ?? []}
				asOf={
					state !== "none" && state.isFresh
						? undefined
						: formatMoment(
								new Date(players?.asOf ?? Date.now()),
								{ language },
								{ now: new Date() },
							)
				}
			/>
			{state !== "none" && (
				<>
					<Fittings state={state} reload={reload} />
					{state.damaged.length > 0 && (
						<DamagedPart state={state} reload={reload} />
					)}
					<DevicePart state={state} reload={reload} />
				</>
			)}
			<InstallPart />
		</Stack>
	);
}

/** An address of this app and no other. */
const safe = (from: string): string => (/^\/(?!\/)/.test(from) ? from : "/");

interface Part {
	readonly state: DeviceHomeState;
	readonly reload: () => Promise<void>;
}

function Fittings({ state: { fittings, isFresh }, reload }: Part) {
	const { say, language } = useReader();
	if (fittings.length === 0) return null;
	return (
		<Section
			title={say("coaching.kept.title")}
			lead={say("coaching.kept.lead")}
		>
			<ul className={styles.list}>
				{fittings.map(({ id, number, player, asOf, waiting, start }) => (
					<li key={id} className={styles.item}>
						<p>
							<strong>{player.name}</strong>,{" "}
							{number === null
								? say("coaching.kept.noNumber")
								: say("coaching.kept.number", { number: String(number) })}
							<br />
							<span className={styles.small}>
								{waiting > 0 || start !== null
									? say("coaching.kept.waiting", { count: waiting })
									: say("coaching.kept.sent")}{" "}
								{asOf !== null &&
									say("coaching.kept.asOf", {
										moment: formatMoment(
											new Date(asOf),
											{ language },
											{ now: new Date() },
										),
									})}
							</span>
						</p>
						<Actions>
							<LinkButton
								{...(isFresh && number !== null
									? { href: stepHref(number, FIRST_STEP) }
									: stayingOnPage(deviceAddress(id, FIRST_STEP)))}
							>
								{say("coaching.kept.open")}
							</LinkButton>
							{waiting === 0 && start === null && (
								<Button
									look="quiet"
									aria-label={say("coaching.kept.removeOf", {
										player: player.name,
									})}
									onClick={async () => {
										await removeFromDevice(id);
										await reload();
									}}
								>
									{say("coaching.kept.remove")}
								</Button>
							)}
						</Actions>
					</li>
				))}
			</ul>
		</Section>
	);
}

function DamagedPart({ state: { damaged }, reload }: Part) {
	const { say, language } = useReader();
	return (
		<Section
			title={say("coaching.damaged.title")}
			lead={say("coaching.damaged.lead")}
		>
			<ul className={styles.list} id="damaged">
				{damaged.map(({ id, text, foundAt }) => (
					<li key={id} className={styles.item}>
						<p>
							{say("coaching.damaged.found", {
								moment: formatMoment(
									new Date(foundAt),
									{ language },
									{ now: new Date() },
								),
							})}
						</p>
						<pre className={styles.damaged}>{text}</pre>
						<Button
							look="risky"
							onClick={async () => {
								await (await deviceStore())?.dropDamaged(id);
								await reload();
							}}
						>
							{say("coaching.damaged.drop")}
						</Button>
					</li>
				))}
			</ul>
		</Section>
	);
}

function DevicePart({ state: { device, isLasting }, reload }: Part) {
	const { say } = useReader();
	const [name, setName] = useState(device.name);
	const [by, setBy] = useState(device.by);
	const isChanged = name.trim() !== device.name || by.trim() !== device.by;
	return (
		<Section
			title={say("coaching.device.title")}
			lead={say("coaching.device.lead")}
			card
		>
			<Columns>
				<TextField
					label={say("coaching.device.name")}
					value={name}
					onChange={setName}
					maxLength={60}
				/>
				<TextField
					label={say("coaching.device.by")}
					value={by}
					onChange={setBy}
					maxLength={60}
				/>
			</Columns>
			<Actions>
				<Button
					disabled={!isChanged}
					onClick={async () => {
						await (await deviceStore())?.putDevice({
							...device,
							name: name.trim(),
							by: by.trim(),
						});
						await reload();
					}}
				>
					{say("coaching.device.keep")}
				</Button>
				{isLasting === false && (
					<Button
						onClick={async () => {
							await navigator.storage.persist();
							await reload();
						}}
					>
						{say("coaching.device.persist")}
					</Button>
				)}
			</Actions>
			{isLasting !== null && (
				<p className={styles.small}>
					{say(
						isLasting
							? "coaching.device.lasting"
							: "coaching.device.notLasting",
					)}
				</p>
			)}
		</Section>
	);
}
