"use client";

import { useRouter } from "next/navigation";
import { useState, useTransition } from "react";
import { Button } from "@/app/_ui/button";
import { Dialog, DialogClose } from "@/app/_ui/dialog";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions } from "@/app/_ui/section";
import { takeDemoAway } from "../actions";

/** Asks once more, then takes the invented data away. */
export function RemoveDemo({ count }: { count: number }) {
	const { say } = useReader();
	const router = useRouter();
	const [gone, setGone] = useState<number | null>(null);
	const [isFailed, setFailed] = useState(false);
	const [isBusy, startTransition] = useTransition();
	const carryOut = () => {
		setFailed(false);
		startTransition(async () => {
			try {
				setGone((await takeDemoAway()).count);
				router.refresh();
			} catch {
				setFailed(true);
			}
		});
	};
	return (
		<>
			{gone !== null && (
				<Notice kind="done" title={say("settings.demo.done")} live>
					{say("settings.demo.doneText", { count: gone })}
				</Notice>
			)}
			{isFailed && (
				<Notice kind="error" title={say("settings.save.notSaved")} live>
					{say("settings.save.noAnswer")}
				</Notice>
			)}
			{count > 0 && (
				<Actions>
					<Dialog
						trigger={
							<Button look="risky" busy={isBusy}>
								{say("settings.demo.remove")}
							</Button>
						}
						title={say("settings.demo.sure")}
						description={say("settings.demo.sureText", { count })}
					>
						<Actions>
							<DialogClose
								render={<Button>{say("settings.demo.no")}</Button>}
							/>
							<DialogClose
								render={
									<Button look="risky">{say("settings.demo.yes")}</Button>
								}
								onClick={carryOut}
							/>
						</Actions>
					</Dialog>
				</Actions>
			)}
		</>
	);
}
