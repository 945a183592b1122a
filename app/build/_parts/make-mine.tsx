"use client";

import { useRouter } from "next/navigation";
import { Button } from "@/app/_ui/button";
import { useReader } from "@/app/_ui/preferences/reader";
import type { OnlineAnswers } from "@/lib/forms/online-cue";
import styles from "./build.module.css";
import { readDraft, replaceDraft } from "./draft";

/** Takes a shared cue over as a draft of this device's own. */
export function MakeMine({ answers }: { answers: OnlineAnswers }) {
	const { say } = useReader();
	const router = useRouter();
	return (
		<div className={styles.way}>
			<Button
				look="main"
				wide
				onClick={() => {
					replaceDraft({ answers, home: readDraft()?.home ?? {}, kept: null });
					router.push("/build");
				}}
			>
				{say("online.shared.mine")}
			</Button>
			<small>{say("online.shared.mineHint")}</small>
		</div>
	);
}
