"use client";

import dynamic from "next/dynamic";
import { type ReactNode, useEffect, useRef } from "react";
import { Busy } from "@/app/_ui/busy";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";
import { Actions } from "@/app/_ui/section";
import { StepQuestions } from "./step-questions";
import { QUESTION_STEPS, RECOMMENDATION, stopName } from "./steps";
import { useWay } from "./way";

const loadRecommendation = () =>
	import("./recommendation").then(
		({ Recommendation }) => Recommendation,
		() => NotHere,
	);

const Recommendation = dynamic(loadRecommendation, { loading: Waiting });

/** Its script was never fetched, and cannot be now. */
function NotHere() {
	const { say } = useReader();
	return (
		<Notice kind="caution" title={say("coaching.recommendationNotHere.title")}>
			<p>{say("coaching.recommendationNotHere.about")}</p>
			<Actions>
				<Button
					onClick={() => {
						// Without a network the page itself might not come back.
						if (navigator.onLine) window.location.reload();
					}}
				>
					{say("coaching.recommendationNotHere.again")}
				</Button>
			</Actions>
		</Notice>
	);
}

function Waiting() {
	return <Busy label={useReader().say("coaching.recommendationComing")} />;
}

/** The stop the address names. All of them are one page, so that going on needs no server. */
export function FittingStep({
	recommendation = <Recommendation />,
}: {
	/** Where the page brings it, it is ready as soon as the page is. */
	recommendation?: ReactNode;
}) {
	const { current } = useWay();
	const reader = useReader();
	const place = useRef<HTMLDivElement>(null);
	const shown = useRef(current);
	const step = QUESTION_STEPS.find(({ id }) => id === current);
	const name = stopName(step ?? RECOMMENDATION, reader);

	// Fetched while questions are answered, to be there where the network is not.
	useEffect(() => {
		const timer = setTimeout(() => void loadRecommendation(), FETCH_AHEAD_MS);
		return () => clearTimeout(timer);
	}, []);

	useEffect(() => {
		if (shown.current === current) return;
		shown.current = current;
		document.title = reader.say("shell.title").replace("%s", name);
		const heading = place.current?.querySelector("h2");
		heading?.setAttribute("tabindex", "-1");
		heading?.focus({ preventScroll: true });
	}, [current, name, reader]);

	return (
		<div ref={place}>
			{step === undefined ? recommendation : <StepQuestions step={step} />}
		</div>
	);
}

/** After the page itself has come to rest. */
const FETCH_AHEAD_MS = 2000;
