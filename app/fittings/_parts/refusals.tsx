"use client";

import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import type { RefusalView } from "@/lib/present/notices";
import { useDesk } from "./desk";

/** Why something cannot be built, with the nearest answer that works as one tap. */
export function Refusals({ refusals }: { refusals: readonly RefusalView[] }) {
	const { answer } = useDesk();
	return refusals.map(({ text, remedy }) => (
		<Notice key={text} kind="error" live>
			<p>{text}</p>
			{remedy !== null && (
				<Button onClick={() => answer(remedy.field, remedy.answer)}>
					{remedy.label}
				</Button>
			)}
		</Notice>
	));
}
