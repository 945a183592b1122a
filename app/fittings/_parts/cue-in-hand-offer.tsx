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
	const { control, answer } = useDesk();
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
		<Notice title="Read on the present cue?">
			<p>
				Bridge and grip are read, the span between them is not. If the cue in
				hand was the present one, {present}, the span follows.
			</p>
			<Button onClick={() => answer("cueInHand", present)}>
				Yes, the cue in hand was {present}
			</Button>
		</Notice>
	);
}
