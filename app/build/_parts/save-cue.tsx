"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import { Dialog, DialogClose } from "@/app/_ui/dialog";
import { Notice } from "@/app/_ui/notice";
import { formatDay } from "@/lib/present/dates";
import styles from "./build.module.css";
import { useBuilding } from "./building";
import { CopyAddress } from "./copy-address";
import { heldText } from "./held-text";
import { useKeeping } from "./use-keeping";
import type { useWork } from "./use-work";

/** Keeps the cue under an address, says whether all is kept, and ends the address. */
export function SaveCue({ work }: { work: ReturnType<typeof useWork> }) {
	const { reader, kept, bringBack, startAnew } = useBuilding();
	const { say } = reader;
	const { state, held, conflict, keep, renew, resolve } = useKeeping(work);
	const [isRenewed, setRenewed] = useState(false);
	const isBusy = state === "saving";
	return (
		<div className={styles.group}>
			{bringBack !== null && (
				<Notice>
					<p>{say("online.save.aside")}</p>
					<div>
						<Button onClick={bringBack}>{say("online.save.putBack")}</Button>
					</div>
				</Notice>
			)}
			{conflict !== null && (
				<Notice kind="caution" title={say("online.save.conflict.title")} live>
					<p>{say("online.save.conflict.text")}</p>
					<div className={styles.row}>
						<Button onClick={() => resolve("mine")}>
							{say("online.save.conflict.mine")}
						</Button>
						<Button onClick={() => resolve("theirs")}>
							{say("online.save.conflict.theirs")}
						</Button>
					</div>
				</Notice>
			)}
			{held !== null && (
				<Notice kind="caution" title={say("online.save.notKept")} live>
					<p>{heldText(held, reader)}</p>
				</Notice>
			)}
			{state === "offline" && (
				<Notice kind="caution" live>
					<p>{say("online.save.offline")}</p>
				</Notice>
			)}
			{state === "gone" && (
				<Notice kind="caution" live>
					<p>{say("online.save.gone")}</p>
				</Notice>
			)}
			{kept === null ? (
				<div>
					<Button busy={isBusy} onClick={() => void keep()} wide>
						{say(isBusy ? "online.save.saving" : "online.save.button")}
					</Button>
				</div>
			) : (
				<>
					<p role="status">
						{say(
							state === "waiting" ? "online.save.waiting" : "online.save.kept",
						)}{" "}
						{kept.expiresAt !== null &&
							say("online.save.until", {
								day: formatDay(new Date(kept.expiresAt), reader),
							})}
					</p>
					<CopyAddress token={kept.token} />
					{isRenewed && <p role="status">{say("online.save.renewed")}</p>}
					<div className={styles.row}>
						<Dialog
							trigger={<Button look="quiet">{say("online.save.renew")}</Button>}
							title={say("online.save.end.title")}
							description={say("online.save.end.text")}
						>
							<div className={styles.row}>
								<DialogClose
									render={<Button>{say("online.save.end.no")}</Button>}
								/>
								<DialogClose
									render={
										<Button
											look="risky"
											onClick={() => void renew().then(setRenewed)}
										>
											{say("online.save.end.yes")}
										</Button>
									}
								/>
							</div>
						</Dialog>
						<Button look="quiet" onClick={startAnew}>
							{say("online.save.startAnew")}
						</Button>
					</div>
				</>
			)}
		</div>
	);
}
