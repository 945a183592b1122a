"use client";

import { useWatch } from "react-hook-form";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { useDesk } from "./desk";

/**
 * Bridge and grip were read but not the span between: read on the present cue, the span follows from
 * its length. Offered, because nobody said which cue it was.
 */
export function CueInHandOffer() {
	const { control, answer, reader } = useDesk();
	const { say } = reader;
	const [span, bridge, grip, inHand, present] = useWatch({
		control,
		name: [
			"bridgeToGrip",
			"bridgeLength",
			"gripFromButt",
			"cueInHand",
			"presentLength",
		],
	});
	if (span || inHand || !bridge || !grip || !present) return null;
	return (
		<Notice title={say("fitting.inHand.title")}>
			<p>{say("fitting.inHand.about", { length: present })}</p>
			<Button onClick={() => answer("cueInHand", present)}>
				{say("fitting.inHand.yes", { length: present })}
			</Button>
		</Notice>
	);
}
