"use client";

import { Notice } from "@/app/_ui/notice";
import { useReader } from "@/app/_ui/preferences/reader";

/** Why a session did not open. Pressed again it is the same one. */
export function NotStarted({ stays }: { stays: "failed" | "waits" | null }) {
	const { say } = useReader();
	if (stays === null) return null;
	return (
		<Notice
			kind={stays === "failed" ? "error" : "caution"}
			title={say(`coaching.start.${stays}.title`)}
			live
		>
			{say(`coaching.start.${stays}.about`)}
		</Notice>
	);
}
